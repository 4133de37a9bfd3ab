using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Rules;

/// <summary>The hire table as a grid: a line for each strike and verdict that can keep a boat, a cell for each material.</summary>
internal static class HireGrid
{
    /// <summary>Severities that can keep a boat: a touch without a mark never does, else nobody reports one.</summary>
    public static readonly StrikeSeverity[] Severities = [.. Enum.GetValues<StrikeSeverity>().Where(s => s != StrikeSeverity.NoMark)];

    /// <summary>Verdicts that can keep a boat.</summary>
    public static readonly Verdict[] Verdicts = [.. Enum.GetValues<Verdict>().Where(v => v != Verdict.Fit)];

    /// <summary>Materials, one a cell.</summary>
    public static readonly PropMaterial[] Materials = Enum.GetValues<PropMaterial>();

    /// <summary>Name of a cell's field.</summary>
    public static string Field(Enum subject, PropMaterial material) => $"{(subject is Verdict ? "verdict" : "strike")}.{Words.Of(subject)}.{Words.Of(material)}";

    /// <summary>What holds in a cell.</summary>
    public static HireWord Of(HireTable table, Enum subject, PropMaterial material) =>
        subject is Verdict verdict ? table.Of(verdict, material) : table.Of((StrikeSeverity)subject, material);

    /// <summary>Words that a cell can hold: what has to come off before the boat moves cannot be in hire.</summary>
    public static IEnumerable<HireWord> Choices(Enum subject) => Enum.GetValues<HireWord>().Where(w => subject is not Verdict.TakeOff || w != HireWord.InHire);

    /// <summary>The rows of a grid as sent: one for all materials where they are alike.</summary>
    public static IReadOnlyList<HireRowSent> Rows(IFormCollection form)
    {
        var rows = new List<HireRowSent>();
        foreach (var subject in Severities.Cast<Enum>().Concat(Verdicts.Cast<Enum>()))
        {
            var (severity, verdict) = subject is Verdict ? ((string?)null, Words.Of(subject)) : (Words.Of(subject), (string?)null);
            var cells = Materials.Select(m => (Material: m, Word: form[Field(subject, m)].ToString())).ToList();
            if (cells.Select(c => c.Word).Distinct(StringComparer.Ordinal).Count() == 1) rows.Add(new HireRowSent(cells[0].Word, severity, verdict));
            else rows.AddRange(cells.Select(c => new HireRowSent(c.Word, severity, verdict, Words.Of(c.Material))));
        }

        return rows;
    }
}
