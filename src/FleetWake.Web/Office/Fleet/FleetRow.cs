using System.Collections.Concurrent;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Propulsion.Causes;
using FleetWake.Reports.Pictures;
using FleetWake.Statistics;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.Office.Charts;

namespace FleetWake.Web.Office.Fleet;

/// <summary>A boat in one line of the fleet page, worked out once a finding, policy and day.</summary>
public sealed record FleetRow
{
    /// <summary>What falls due within these days is spoken of.</summary>
    public const int SoonDays = 30;

    public required string Boat { get; init; }

    public required string Name { get; init; }

    public required string? Dock { get; init; }

    public required string? DockName { get; init; }

    public required FleetState State { get; init; }

    public required HireState Hire { get; init; }

    /// <summary>Its reasons in sentences, other boats and engines in them by their names.</summary>
    public required IReadOnlyList<string> Whys { get; init; }

    /// <summary>What else needs a person and does not keep the boat, most urgent first.</summary>
    public required IReadOnlyList<Attention> Others { get; init; }

    public required int OpenStrikes { get; init; }

    public required IReadOnlyList<FleetPosition> Positions { get; init; }

    /// <summary>What is overdue or due soon, most overdue first.</summary>
    public required IReadOnlyList<DueItem> Due { get; init; }

    public required DateOnly? NextDueOn { get; init; }

    /// <summary>Whatever somebody may type to find the boat, in capitals.</summary>
    public required string Words { get; init; }

    /// <summary>The row as written, by the way its reader reads numbers.</summary>
    public ConcurrentDictionary<object, string> Written { get; } = new();

    public int Overdue => Due.Count(d => d.Overdue());

    /// <summary>What comes first: blocked, then outside the band, then leaving it or overdue, then the rest; laid-up boats and those that left come last.</summary>
    public (int Group, double Within, string Name) Urgency => (Group(), Within(), Name.ToUpperInvariant());

    /// <summary>A finding's row.</summary>
    /// <param name="stored">The finding.</param>
    /// <param name="office">What the operator has settled.</param>
    /// <param name="today">The dock's day.</param>
    /// <param name="behind">Newer records wait to be counted: nothing may be said to let the boat go.</param>
    public static FleetRow Of(StoredFinding stored, OfficeState office, DateOnly today, bool behind, IReadOnlyList<string>? whys = null)
    {
        var policy = office.Policy;
        var finding = stored.Finding;
        var hire = HireStates.Of(finding, policy);
        var due = Outlook.Of(finding, today, policy);
        var props = finding.Positions.Select(p => p.Mounting?.Prop.Prop);
        return new FleetRow
        {
            Boat = finding.Boat,
            Name = Phrases.Plain(finding.DisplayName()),
            Dock = finding.Registered?.Dock,
            DockName = finding.Registered is { } card ? Phrases.Plain(office.DockName(card.Dock)) : null,
            State = StateOf(finding, hire) is var state && behind && state == FleetState.InHire ? FleetState.Pending : state,
            Hire = hire,
            Whys = whys ?? [.. hire.Reasons.Select(r => r.Sentence)],
            Others = [.. Attentions.Of(finding, policy).Where(a => !a.Blocks)],
            OpenStrikes = finding.Positions.Sum(p => p.OpenStrikes.Count),
            Positions = [.. finding.Positions.Select(p => FleetPosition.Of(finding, p))],
            Due = [.. due.Where(d => d.DaysOverdue > -SoonDays)],
            NextDueOn = due.Count > 0 ? due[0].DueOn : null,
            Words = string.Join('\n', finding.Positions.Select(p => p.Engine?.Engine).Concat(props).Append(finding.Boat).Append(finding.DisplayName()).OfType<string>()).ToUpperInvariant(),
        };
    }

    private static FleetState StateOf(BoatFinding finding, HireState hire) =>
        finding.Retired is not null ? FleetState.Left
        : finding.IsLaidUp() ? FleetState.LaidUp
        : hire.Word switch { HireWord.Out => FleetState.Out, HireWord.LookFirst => FleetState.LookFirst, _ => FleetState.InHire };

    private int Group() => State switch
    {
        FleetState.Out => 0,
        FleetState.LookFirst or FleetState.Pending => 1,
        FleetState.LaidUp => 6,
        FleetState.Left => 7,
        _ when Others.Any(a => a.Kind == AttentionKind.OutsideBand) => 2,
        _ when Overdue > 0 || Others.Any(a => a.Kind is AttentionKind.LeavingBand) => 3,
        _ when Others.Count > 0 => 4,
        _ => 5,
    };

    private double Within() => -Math.Max(
        Due.Count > 0 ? Due[0].DaysOverdue : -SoonDays,
        100 * Positions.Select(p => p.Exit?.Within100HoursChance ?? 0).DefaultIfEmpty().Max());
}

/// <summary>One engine position in a row.</summary>
public sealed record FleetPosition(
    Logbook.Position Position, string? Model, PropCard? Prop, BandStrip? Strip, Standing? Standing, string? Place, Estimate? Drift, bool FleetOnly, BandExit? Exit)
{
    public static FleetPosition Of(BoatFinding finding, PositionFinding position)
    {
        var mounting = position.Mounting;
        var standing = mounting is null ? null : Standings.Of(position);
        var present = mounting?.Band.PresentRpm;
        var place = present is { } rpm && position.Engine is { BandLowRpm: { } low, BandHighRpm: { } high } ? Standings.Place(rpm, low, high) : null;
        return new FleetPosition(
            position.Position, position.Engine?.Model, mounting?.Prop, BandStrip.Of(position), standing, place,
            finding.IsLaidUp() ? null : mounting?.Drift, mounting?.FleetOnly ?? false, mounting?.Exit);
    }
}

/// <summary>Whether a boat goes out, as the fleet page tells it.</summary>
public enum FleetState
{
    /// <summary>Not for hire.</summary>
    Out,

    /// <summary>A look first.</summary>
    LookFirst,

    /// <summary>Its newest records are not counted yet: what they say is not known.</summary>
    Pending,

    /// <summary>Nothing on record keeps it.</summary>
    InHire,

    /// <summary>Laid up.</summary>
    LaidUp,

    /// <summary>Left the fleet.</summary>
    Left,
}
