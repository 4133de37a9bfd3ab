using System.Globalization;
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

    /// <summary>The stamp: of now, or of noon of an earlier day that the form tells. Papers are often written a day late.</summary>
    private static Stamp OnDay(Stamp now, FormReading typed)
    {
        if (typed.Text(DayField) is not { } text) return now;
        if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return now with { HappenedAt = text, EnteredAt = now.HappenedAt };
        return now.HappenedAt!.StartsWith($"{day:yyyy-MM-dd}", StringComparison.Ordinal) ? now : now with { HappenedAt = $"{day:yyyy-MM-dd}T12:00:00", EnteredAt = now.HappenedAt };
    }
}
