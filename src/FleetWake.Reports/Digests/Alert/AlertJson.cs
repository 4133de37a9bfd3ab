using System.Text.Json;
using FleetWake.Logbook.Entries;

namespace FleetWake.Reports.Digests.Alert;

/// <summary>An alert as it is handed to an operator's own program.</summary>
internal static class AlertJson
{
    /// <summary>The alert as JSON, in the words of the API.</summary>
    /// <param name="operator">Id of the operator.</param>
    /// <param name="alert">Key of the alert.</param>
    /// <param name="draft">The alert as it is mailed.</param>
    /// <param name="causes">What it tells of.</param>
    public static string Of(string @operator, string alert, DigestDraft draft, IReadOnlyList<AlertCause> causes) => JsonSerializer.Serialize(
        new
        {
            Operator = @operator,
            Alert = alert,
            draft.Subject,
            Causes = causes.Select(c => new { c.Key, c.Kind, c.Urgent, c.Boat, c.Position, c.Dock, c.On, c.Name, c.Sentence, c.Act }),
            Caution = "A decision aid: the owner's manual, local rules and a licensed technician win.",
        },
        LogbookJson.Options);
}
