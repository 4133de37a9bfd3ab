using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Mend;

/// <summary>A record that somebody wants to put right.</summary>
/// <param name="Fact">The record.</param>
/// <param name="About">The one it is of.</param>
/// <param name="Counts">It counts; one that was taken back or replaced does not.</param>
public sealed record MendedRecord(IFact Fact, MendSubject About, bool Counts);

/// <summary>Whose record it is: a boat, an engine or a prop.</summary>
/// <param name="Kind">boat, engine or prop.</param>
/// <param name="Id">Its id.</param>
public sealed record MendSubject(string Kind, string Id)
{
    /// <summary>The stream of its records.</summary>
    public string Stream => Kind switch { "engine" => StreamName.Engine(Id), "prop" => StreamName.Prop(Id), _ => StreamName.Boat(Id) };

    /// <summary>Its page.</summary>
    public string Page => Kind switch { "boat" => $"/office/boats/{Id}", "prop" => $"/office/props/{Uri.EscapeDataString(Id)}", _ => "/office/questions" };

    /// <summary>The one whose stream this is; null of a stream of anything else.</summary>
    public static MendSubject? OfStream(string stream) =>
        StreamName.BoatOf(stream) is { } boat ? new MendSubject("boat", boat)
        : StreamName.EngineOf(stream) is { } engine ? new MendSubject("engine", engine)
        : StreamName.PropOf(stream) is { } prop ? new MendSubject("prop", prop)
        : null;

    /// <summary>As a form or an address names it; null when it names nothing.</summary>
    public static MendSubject? Read(string? kind, string? id) => kind is "boat" or "engine" or "prop" && id is { Length: > 0 and <= 40 } ? new MendSubject(kind, id) : null;
}

/// <summary>Finds records that are to be put right, and says who may.</summary>
internal sealed class MendReading(FleetReading reading, FleetOperators operators)
{
    /// <summary>Whoever may record such a thing may also correct it or take it back.</summary>
    public static bool May(HttpContext http, IFact fact) =>
        fact is not Retracted && Amendment.KindOf(fact) is { } kind && http.User.May(Verb.Record, Matter.DockWork)
        && Permissions.Of(kind) is var (verb, matter) && http.User.May(verb, matter);

    public async Task<MendedRecord?> FindAsync(HttpContext http, MendSubject? about, Guid entry)
    {
        if (about is null || await reading.SettledLogAsync(http.User.OperatorOf(), about.Stream, http.RequestAborted) is not { } settled) return null;
        return settled.Log.Facts.FirstOrDefault(f => f.Entry.Id == entry && Amendment.KindOf(f) is not null) is { } fact
            ? new MendedRecord(fact, about, settled.Counting.Facts.Any(f => f.Entry.Id == entry))
            : null;
    }

    /// <summary>Small parts that were told with a record: a correction takes its place in full.</summary>
    public async Task<IReadOnlyList<PartUsed>> PartsAsync(HttpContext http, IFact fact)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var logs = await reading.LogsAsync(tenant, await reading.StreamsAsync(tenant, StreamName.Part(""), ct), ct);
        return [.. logs.Values.SelectMany(l => l.Facts).OfType<PartUsed>().Where(p => p.Entry.Id == fact.Entry.Id)];
    }

    public async Task<string> ZoneAsync(HttpContext http, MendedRecord record)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        return record.Fact.Entry.Zone is { Length: > 0 } zone ? zone : (await operators.FindAsync(tenant, ct))!.Zone;
    }
}
