using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Trials;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses one mounting: its trials, their drift, its margin and its band exit.</summary>
internal static class AssessMounting
{
    public static MountingFinding Of(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter, FleetPriors priors)
    {
        var (worked, trials, steps, atReference, series) = Read(history, mounting, engine, meter, priors);
        var breaks = steps.Count(s => s.NewBaseline);
        var prop = Card(history, mounting);
        var (prior, settings) = priors.Drift.Member(Member(history, mounting, prop.Material, series));
        var drift = WearDrift.Of(trials, series, prior, settings);
        trials = WithGrossChances(trials, series, drift);
        var band = Banding.Standing(trials, engine, drift);
        // A prop that came off runs no more: the engine's later hours are another's.
        var use = mounting.To is null ? MeterUse.Of(meter, priors.Season) : null;
        var exit = Banding.Exit(trials, engine, drift, band, breaks, use?.HoursSince(drift) ?? 0);
        return new MountingFinding(
            mounting.Id,
            prop,
            mounting.Fitted.Entry.Date(),
            meter?.At(mounting.Fitted.Entry)?.Hours,
            trials,
            [.. steps.Select(s => new HistoryMark(s.Kind, s.Entry.Date(), meter?.At(s.Entry)?.Hours, s.Label))],
            trials.FirstOrDefault(t => t.SetAside is null && t.Stretch == breaks)?.LineRpm(atReference),
            drift?.DriftPer100Hours,
            drift is { Found.PriorOnly: false } ? Banding.Line(drift, exit, goesOn: drift.LastStretch == breaks && exit.State != BandExitState.AlreadyOutside) : null,
            band,
            exit with { Dates = use?.DatesOf(exit, drift) },
            Causes.Of(band, trials))
        {
            Found = mounting.Found,
            AtReference = atReference,
            PointsTo = PointsTo.Of(Comparable(worked, breaks), engine, prop, priors.ResponseOf(engine?.Model)),
            FleetOnly = drift?.Found.PriorOnly ?? false,
            LevelRpm = drift?.Found.LevelRpm,
            Watch = DriftWatch.Of(series, trials, priors),
            Steps = StepShown.Of(drift),
            NextTrial = use is null ? null : NextTrialCard.Of(drift, engine, use),
        };
    }

    /// <summary>A mounting as its fleet's fit takes it; null without a usable trial.</summary>
    public static FleetMember? Member(BoatHistory history, MountingSpan mounting, FleetPriors priors)
    {
        var (engine, meter) = Hung(history, mounting);
        var read = Read(history, mounting, engine, meter, priors);
        return read.Series.Trials.Count == 0 ? null : Member(history, mounting, history.PropOf(mounting)?.Material, read.Series);
    }

    /// <summary>The trials of any mounting in order, worked out and each used or set aside.</summary>
    public static IReadOnlyList<TrialFinding> Trials(BoatHistory history, MountingSpan mounting, FleetPriors priors)
    {
        var (engine, meter) = Hung(history, mounting);
        return Read(history, mounting, engine, meter, priors).Trials;
    }

    /// <summary>The drift of any mounting as the estimator has it; null without a usable trial.</summary>
    public static WearDrift? Drift(BoatHistory history, MountingSpan mounting, FleetPriors priors)
    {
        var (engine, meter) = Hung(history, mounting);
        var read = Read(history, mounting, engine, meter, priors);
        var (prior, settings) = priors.Drift.Member(Member(history, mounting, Card(history, mounting).Material, read.Series));
        return WearDrift.Of(read.Trials, read.Series, prior, settings);
    }

    /// <summary>The engine that turned a mounting's prop, and its hours.</summary>
    public static (EngineCard? Engine, MeterChain? Meter) Hung(BoatHistory history, MountingSpan mounting) => history.EngineOf(mounting) is { } hung
        ? (Assess.Card(history, hung.Engine), history.Meters.GetValueOrDefault(hung.Engine))
        : (null, null);

    private static FleetMember Member(BoatHistory history, MountingSpan mounting, PropMaterial? material, MountingSeries series) => new(
        mounting.Id,
        history.Boat,
        material is { } m ? Words.Of(m) : NotKnown,
        HomeThen(history, mounting) is { } home ? Words.Of(home.Water) : NotKnown,
        series.Series);

    private const string NotKnown = "not known";

    /// <summary>Where the boat was at home when the prop was fitted: a boat that moved on wore it in that water.</summary>
    private static BoatHome? HomeThen(BoatHistory history, MountingSpan mounting) =>
        BoatHome.Of(history.Registered, history.Facts.Where(f => history.Order.Compare(f.Entry, mounting.Fitted.Entry) <= 0));

    private static Readings Read(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter, FleetPriors priors)
    {
        var steps = MountingSteps.Of(history, mounting);
        var worked = Trials(history, mounting, engine, meter, [.. steps.Where(s => s.NewBaseline).Select(s => s.Entry)], priors);
        var read = worked.ConvertAll(w => w.Trial);
        var atReference = MostAtReference(read);
        var trials = OfOneKind(read, atReference);
        return new(worked, trials, steps, atReference, MountingSeries.Of(history, trials, worked, steps, engine, atReference));
    }

    private static List<TrialFinding> WithGrossChances(List<TrialFinding> trials, MountingSeries series, WearDrift? drift)
    {
        if (drift is null) return trials;
        var chances = series.Trials.Zip(drift.Found.GrossChances).ToDictionary(p => p.First, p => p.Second);
        return [.. trials.Select((t, i) => chances.TryGetValue(i, out var chance) ? t with { GrossChance = chance } : t)];
    }

    private static List<Worked> Trials(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter, List<Entry> breaks, FleetPriors priors)
    {
        var (position, prop) = (mounting.Fitted.Position, mounting.Fitted.Prop);
        var gauges = engine is null ? [] : GaugeErrors.Of(history, engine.Engine);
        var baselines = new Dictionary<int, TrialConditions>();
        Worked? Run(TrialRun trial)
        {
            var stretch = StretchOf(history, breaks, trial.Entry);
            var found = AssessTrial.At(
                position,
                trial,
                engine,
                GaugeErrors.At(gauges, history.Order, trial.Entry),
                meter,
                history.PitchInchesAt(prop, trial.Entry),
                baselines.GetValueOrDefault(stretch),
                priors.ResponseOf(engine?.Model),
                stretch,
                history.Believed.Contains(trial.Entry.Id));
            // The first trial that counts is the baseline that later ones are held against.
            if (found is { Trial.SetAside: null or SetAsideReason.HoursUnknown }) baselines.TryAdd(stretch, TrialReadings.Conditions(trial));
            return found;
        }

        Worked? Assessed(IFact fact) => fact switch
        {
            TrialRun trial => Run(trial),
            NormalisedRpmRead read when read.Position == position =>
                new Worked(AssessTrial.Of(read, engine, meter, StretchOf(history, breaks, read.Entry), history.Believed.Contains(read.Entry.Id)), null, false, null, read.Entry)
                {
                    AirCelsius = read.AirTemperatureCelsius,
                    LoadDeltaKilograms = read.LoadDeltaKilograms,
                },
            _ => null,
        };
        return [.. history.Facts.Where(f => mounting.Holds(f.Entry)).Select(Assessed).OfType<Worked>()];
    }

    /// <summary>Trials of a stretch that can be held against each other; hours are not needed for that.</summary>
    private static List<Worked> Comparable(List<Worked> worked, int stretch) =>
        worked.FindAll(w => w is { Corrected: not null, Trial.SetAside: null or SetAsideReason.HoursUnknown } && w.Trial.Stretch == stretch);

    /// <summary>
    /// A reading as read and one at reference conditions differ by weather, which a line through both would take for drift. The
    /// line is one of readings at reference conditions when most of the trials could be brought there.
    /// </summary>
    private static bool MostAtReference(List<TrialFinding> trials)
    {
        var usable = trials.Where(MountingSeries.Usable).ToList();
        return 2 * usable.Count(t => t.Reference is not null) > usable.Count;
    }

    private static List<TrialFinding> OfOneKind(List<TrialFinding> trials, bool atReference) =>
    [
        .. trials.Select(t => MountingSeries.Usable(t) && (atReference ? t.Reference is null : t.Normalised) ? t with { SetAside = SetAsideReason.OtherConditions } : t),
    ];

    private static int StretchOf(BoatHistory history, List<Entry> breaks, Entry entry) => breaks.Count(b => history.Order.Compare(b, entry) <= 0);

    private static PropCard Card(BoatHistory history, MountingSpan mounting)
    {
        var facts = history.Props.GetValueOrDefault(mounting.Fitted.Prop) ?? [];
        var registered = history.PropOf(mounting);
        var numbers = PropNumbers.Of(facts);
        return new PropCard(
            mounting.Fitted.Prop,
            numbers.DiameterInches,
            numbers.PitchInches,
            registered?.Blades,
            registered?.Material);
    }

    /// <summary>A trial, the numbers behind it where it was run here, whether somebody said of each run if the prop drew air, the pitch then [in], and its entry.</summary>
    internal sealed record Worked(TrialFinding Trial, CorrectedTrial? Corrected, bool Watched, double? PitchInches, Entry Entry)
    {
        /// <summary>Air temperature [deg C], when read.</summary>
        public double? AirCelsius { get; init; }

        /// <summary>People and load on board [kg], when told.</summary>
        public double? LoadKilograms { get; init; }

        /// <summary>Load less a reference that somebody else chose [kg], when told so.</summary>
        public double? LoadDeltaKilograms { get; init; }
    }

    private sealed record Readings(
        List<Worked> Worked, List<TrialFinding> Trials, IReadOnlyList<MountingStep> Steps, bool AtReference, MountingSeries Series);
}
