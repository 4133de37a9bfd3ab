using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Records;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office;

/// <summary>
/// How a page of the office records something: by the same door as every device, stamped with who is signed in. The entry's id
/// was made with the form, so that a form sent twice is recorded once.
/// </summary>
internal sealed class OfficeRecords(Recorder recorder, TimeProvider time)
{
    /// <summary>Name of the form's field that holds the entry's id.</summary>
    public const string EntryField = "entry";

    /// <summary>A finding is usually made again within a second; a page that waits longer says so instead.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>A new id for a form.</summary>
    public Guid NewEntry() => Guid.CreateVersion7(time.GetUtcNow());

    /// <summary>
    /// Records what a form says, stamped with now and whoever is signed in. A second click on it comes a moment later, and finds
    /// what the first one recorded: it is held against that by the moment of the first.
    /// </summary>
    /// <param name="http">The request.</param>
    /// <param name="form">The form, which tells the entry's id.</param>
    /// <param name="zone">IANA zone of the dock, or of the office.</param>
    /// <param name="make">Makes the record of its stamp.</param>
    public Task<Answer> TakeAsync<T>(HttpContext http, IFormCollection form, string zone, Func<Stamp, T> make)
        where T : ICommand<T> => TakeAsync(http, IdOf(form), zone, RecordKind.Find(T.Kind)!, stamp => make(stamp));

    /// <summary>The same of a record of a kind that is known as it runs.</summary>
    public async Task<Answer> TakeAsync(HttpContext http, Guid id, string zone, RecordKind kind, Func<Stamp, ICommand> make)
    {
        ICommand At(DateTimeOffset now) => make(Stamp.At(id, http.User.PersonOf(), now, zone));

        var command = At(time.GetUtcNow());
        var answer = await TakeAsync(http, kind, command);
        if (answer.Outcome != Outcome.Conflict) return answer;
        var first = await recorder.FirstOfAsync(http.User.OperatorOf(), kind, command, Arrival.AtOffice(time.GetUtcNow()), http.RequestAborted);
        return first is { } moment ? await TakeAsync(http, kind, At(moment)) : answer;
    }

    /// <summary>Records something; refused when the role of whoever is signed in does not cover it.</summary>
    public Task<Answer> TakeAsync<T>(HttpContext http, T command)
        where T : ICommand<T> => TakeAsync(http, RecordKind.Find(T.Kind)!, command);

    /// <summary>The same of a record of a kind that is known as it runs.</summary>
    public async Task<Answer> TakeAsync(HttpContext http, RecordKind kind, ICommand command) =>
        http.User.RoleOf() is { } role && Permissions.Allow(role, kind, command)
            ? await recorder.TakeAsync(http.User.OperatorOf(), kind, command, Arrival.AtOffice(time.GetUtcNow()), http.RequestAborted)
            : new Answer(command.Entry?.Id, Outcome.Refused, false, [], [], [Permissions.NotForThisRole]);

    /// <summary>The id of the entry that a form makes, which was made with the form.</summary>
    public Guid IdOf(IFormCollection form) => Guid.TryParse(form[EntryField], out var told) && told != Guid.Empty ? told : NewEntry();

    /// <summary>Waits for a moment until a boat's page tells of its last record.</summary>
    public Task WaitAsync(HttpContext http, string boat, FleetReading reading) =>
        WaitAsync(() => reading.IsUpToDateAsync(http.User.OperatorOf(), boat, http.RequestAborted), http.RequestAborted);

    /// <summary>Waits a moment until what was just recorded is in what pages read; false when it is not yet.</summary>
    /// <param name="isThere">Whether it is.</param>
    /// <param name="ct">Ends the waiting.</param>
    public async Task<bool> WaitAsync(Func<Task<bool>> isThere, CancellationToken ct)
    {
        var begun = time.GetTimestamp();
        while (time.GetElapsedTime(begun) < Patience)
        {
            if (await isThere()) return true;
            await Task.Delay(TimeSpan.FromMilliseconds(50), ct);
        }

        return false;
    }
}
