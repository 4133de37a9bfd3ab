using System.Runtime.CompilerServices;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Logging;

namespace FleetWake.Web.Office.Fleet;

/// <summary>
/// The rows of the fleet page, kept as long as the findings they were made from. Most boats are as they were at the last look,
/// so that a page of a thousand of them is a thousand strings put after each other.
/// </summary>
internal sealed class FleetRows(IServiceProvider services, ILoggerFactory loggers)
{
    private readonly ConditionalWeakTable<StoredFinding, Made> made = [];

    /// <summary>The row of a finding.</summary>
    public FleetRow Of(StoredFinding finding, OfficeState office, DateOnly today, bool behind, Namings namings)
    {
        var kept = made.GetOrCreateValue(finding);
        if (kept.Last is { } last && ReferenceEquals(last.Office, office) && last.Today == today && last.Behind == behind && last.Row.Whys.SequenceEqual(WhysOf(last.Row, namings), StringComparer.Ordinal)) return last.Row;
        var row = FleetRow.Of(finding, office, today, behind);
        row = WhysOf(row, namings) is var whys && whys.SequenceEqual(row.Whys, StringComparer.Ordinal) ? row : FleetRow.Of(finding, office, today, behind, whys);
        kept.Last = new Kept(office, today, behind, row);
        return row;
    }

    /// <summary>Writes rows, those that were written before for readers of the same ways as they are.</summary>
    public async Task<IReadOnlyList<string>> WriteAsync(IReadOnlyList<FleetRow> rows, Measures measures)
    {
        object way = measures.Way;
        if (rows.Any(r => !r.Written.ContainsKey(way)))
        {
            // One renderer a time: it keeps every component that it wrote.
            await using var renderer = new HtmlRenderer(services, loggers);
            await renderer.Dispatcher.InvokeAsync(async () =>
            {
                foreach (var row in rows.Where(r => !r.Written.ContainsKey(way)))
                {
                    var written = await renderer.RenderComponentAsync<FleetRowView>(ParameterView.FromDictionary(new Dictionary<string, object?> { ["Row"] = row, ["Measures"] = measures }));
                    row.Written[way] = written.ToHtmlString();
                }
            });
        }

        return [.. rows.Select(r => r.Written[way])];
    }

    // Names of other things stand only in what somebody brought along from them.
    private static List<string> WhysOf(FleetRow row, Namings namings) => [.. row.Hire.Reasons.Select(r => namings.Say(r.Sentence))];

    private sealed class Made
    {
        public Kept? Last { get; set; }
    }

    private sealed record Kept(OfficeState Office, DateOnly Today, bool Behind, FleetRow Row);
}
