using System.Globalization;
using System.Security.Cryptography;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Histories;
using FleetWake.Store.Records;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Forms;

/// <summary>
/// Takes a page's form as a record: read, recorded, and back to the page by a redirect; or the page again with the
/// refusals beside its fields.
/// </summary>
internal sealed class OfficeForms(OfficeRecords records, FleetReading reading, TimeProvider time)
{
    /// <summary>Name of the field that tells on which day something was done.</summary>
    public const string DayField = "on";

    /// <summary>A new id for a form.</summary>
    public Guid NewEntry() => records.NewEntry();

    /// <summary>Today by a zone's clock.</summary>
    public DateOnly Today(string zone) => Api.Reading.DueApi.TodayAt(zone, time);

    /// <summary>Takes a form.</summary>
    /// <param name="http">The request.</param>
    /// <param name="name">Name of the form on its page.</param>
    /// <param name="form">What was sent.</param>
    /// <param name="zone">IANA zone of the dock or the office, for the stamp.</param>
    /// <param name="there">Where to go afterwards.</param>
    /// <param name="read">Makes the record out of what was typed.</param>
    /// <param name="again">The page with the form that was not taken.</param>
    public async Task<IResult> TakeAsync<T>(
        HttpContext http, string name, IFormCollection form, string zone, string there, Func<FormReading, Stamp, T> read, Func<FormState, Task<IResult>> again)
        where T : ICommand<T>
    {
        var typed = new FormReading(form);
        var page = again;
        again = state =>
        {
            // The page's head says at once that nothing was recorded, and why.
            http.Features.Set(state);
            return page(state);
        };
        T Of(Stamp now) => read(typed, OnDay(now, typed));
        var command = Of(Stamp.At(NewEntry(), http.User.PersonOf(), time.GetUtcNow(), zone));
        if (typed.Refusals.Count > 0)
        {
            // What else is wrong is told along: a person mends all at once.
            var more = RecordKind.Find(T.Kind)!.Decide(command, Arrival.AtOffice(time.GetUtcNow())) is Decision.Refuse refuse ? refuse.Refusals : [];
            return await again(FormState.Of(name, form, [.. typed.Refusals, .. more.Where(m => typed.Refusals.All(t => t.Field != m.Field))]));
        }

        var answer = await records.TakeAsync(http, form, zone, Of);
        if (answer.Outcome == Outcome.Conflict)
            return await again(FormState.Of(name, form, [new Refusal("", "sent_before", PageTexts.English["forms.sent-before"])]));
        if (answer.Outcome == Outcome.Refused) return await again(FormState.Of(name, form, answer.Refusals));
        var folded = await records.WaitAsync(() => reading.UpToDateAsync(http.RequestAborted, http.User.OperatorOf()), http.RequestAborted);
        return Results.Redirect($"{there}{(there.Contains('?', StringComparison.Ordinal) ? '&' : '?')}done={Uri.EscapeDataString(name)}{(folded ? "" : "&behind=1")}");
    }

    /// <summary>Takes a form that makes several records, one after the other; nothing is recorded unless all of them can be.</summary>
    /// <param name="http">The request.</param>
    /// <param name="name">Name of the form on its page.</param>
    /// <param name="form">What was sent.</param>
    /// <param name="zone">IANA zone of the dock or the office, for the stamps.</param>
    /// <param name="there">Where to go afterwards.</param>
    /// <param name="read">Makes the records out of what was typed; the stamp of each is asked for by its number from 0.</param>
    /// <param name="again">The page with the form that was not taken.</param>
    public async Task<IResult> TakeSeveralAsync(
        HttpContext http, string name, IFormCollection form, string zone, string there, Func<FormReading, Func<int, Stamp>, IReadOnlyList<ICommand>> read, Func<FormState, Task<IResult>> again)
    {
        var (typed, id) = (new FormReading(form), records.IdOf(form));
        Task<IResult> Refused(IReadOnlyList<Refusal> refusals)
        {
            var state = FormState.Of(name, form, [.. refusals.DistinctBy(r => r.Field)]);
            http.Features.Set(state);
            return again(state);
        }

        var now = Stamp.At(id, http.User.PersonOf(), time.GetUtcNow(), zone);
        var commands = read(typed, n => OnDay(now with { Id = Numbered(id, n) }, typed));
        var kinds = commands.Select(c => RecordKind.All.Single(k => k.CommandType == c.GetType())).ToList();
        var refusals = kinds.Zip(commands).SelectMany(c => c.First.Decide(c.Second, Arrival.AtOffice(time.GetUtcNow())) is Decision.Refuse refuse ? refuse.Refusals : []).ToList();
        if (typed.Refusals.Count + refusals.Count > 0) return await Refused([.. typed.Refusals, .. refusals]);
        for (var i = 0; i < commands.Count; i++)
        {
            // The stamp is asked for anew: a second click finds what the first one recorded by its moment.
            var (at, which) = (i, commands[i].Entry!.Id!.Value);
            var answer = await records.TakeAsync(http, which, zone, kinds[i], stamp => read(typed, n => OnDay(stamp with { Id = Numbered(id, n) }, typed))[at]);
            if (answer.Outcome == Outcome.Conflict) return await Refused([new Refusal("", "sent_before", PageTexts.English["forms.sent-before"])]);
            if (answer.Outcome == Outcome.Refused) return await Refused(answer.Refusals);
        }

        await records.WaitAsync(() => reading.UpToDateAsync(http.RequestAborted, http.User.OperatorOf()), http.RequestAborted);
        return Results.Redirect($"{there}?done={Uri.EscapeDataString(name)}");
    }

    /// <summary>Ids of the records of one form, the same whenever it is sent.</summary>
    private static Guid Numbered(Guid id, int n) => n == 0 ? id : new Guid(SHA256.HashData([.. id.ToByteArray(), (byte)n]).AsSpan(0, 16));

    /// <summary>The stamp: of now, or of noon of an earlier day that the form tells. Papers are often written a day late.</summary>
    private static Stamp OnDay(Stamp now, FormReading typed)
    {
        if (typed.Text(DayField) is not { } text) return now;
        if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return now with { HappenedAt = text, EnteredAt = now.HappenedAt };
        return now.HappenedAt!.StartsWith($"{day:yyyy-MM-dd}", StringComparison.Ordinal) ? now : now with { HappenedAt = $"{day:yyyy-MM-dd}T12:00:00", EnteredAt = now.HappenedAt };
    }
}
