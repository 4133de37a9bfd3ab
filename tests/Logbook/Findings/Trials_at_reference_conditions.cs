using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Tests.Findings;

public class Trials_at_reference_conditions
{
    // Rows of tests/Propulsion/Reference/power_correction_vectors.csv, whose provenance stands there: air, CF of SAE J1349 and
    // CF^0.38, the gain assumed of a boat nothing is known of.
    [Theory]
    [InlineData(15, 1013.25, 0, 0.95341, 0.98204)]
    [InlineData(30, 1013.25, 80, 1.02279, 1.0086)]
    [InlineData(35, 1005, 80, 1.05705, 1.0213)]
    public void RPM_is_brought_to_reference_air_beside_what_was_read(double celsius, double hectopascals, double humidity, double factor, double rpmFactor)
    {
        var trial = Mounting(Dock.OneBoat().With(InAir("2026-02-01T10:00", 5500, 120, celsius, hectopascals, humidity))).Trials.Single();
        Assert.Equal(5500, trial.Rpm);
        Assert.Equal(factor, trial.Reference!.CorrectionFactor!.Value, 2e-5);
        Assert.Equal(5500 * rpmFactor, trial.Reference.Rpm, 0.5);
        Assert.True(trial.Reference.RpmSd > 0);
    }

    [Fact]
    public void Weather_is_no_drift()
    {
        // One prop that never changes, read through a summer and into a cold spring: 5500 at reference air, CF^-0.38 of it at the helm.
        double Read(double rpmFactor) => Math.Round(5500 / rpmFactor);
        var fleet = Dock.OneBoat().With(
            InAir("2026-02-01T10:00", Read(1.0213), 120, 35, 1005, 80),
            InAir("2026-03-01T10:00", Read(1.0213), 140, 35, 1005, 80),
            InAir("2026-05-01T10:00", Read(1.0086), 160, 30, 1013.25, 80),
            InAir("2026-08-01T10:00", Read(0.98204), 180, 15, 1013.25, 0),
            InAir("2026-09-01T10:00", Read(0.98204), 200, 15, 1013.25, 0));
        var mounting = Mounting(fleet);
        Assert.True(mounting.AtReference);
        Assert.True(mounting.Drift!.Low < 2, $"{mounting.Drift}");
        Assert.True(mounting.Watch is { EvidenceToOne: < 1, RaisedAt: null }, $"{mounting.Watch}");
        Assert.All(mounting.Trials, t => Assert.Equal(5500, t.Reference!.Rpm, 1.5));
    }

    [Fact]
    public void Without_the_airs_temperature_a_trial_stays_as_read()
    {
        var trial = Mounting(Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500, 120) with { PressureHectopascals = 1009 })).Trials.Single();
        Assert.Null(trial.Reference);
        Assert.Contains(TrialDoubt.TemperatureMissing, trial.Flags);
    }

    [Fact]
    public void Thin_air_of_the_mountains_is_outside_what_the_correction_may_be_used_for() // CF 1.16 at 850 hPa
    {
        var trial = Mounting(Dock.OneBoat().With(InAir("2026-02-01T10:00", 5200, 120, 15, 850, 50))).Trials.Single();
        Assert.Null(trial.Reference);
        Assert.Contains(TrialDoubt.OutsideValidity, trial.Flags);
    }

    [Fact]
    public void A_supercharged_engine_is_never_corrected_for_air()
    {
        var fleet = new Fleet().With(Dock.Boat(), Dock.Engine() with { AirIntake = "supercharged" }, Dock.Fitted(), Dock.Prop(), Dock.Mounted())
            .With(InAir("2026-02-01T10:00", 5500, 120, 35, 1005, 80));
        Assert.Null(Mounting(fleet).Trials.Single().Reference);
    }

    [Fact]
    public void What_the_helm_read_over_the_band_stays_over_whatever_it_comes_to_at_reference_air()
    {
        var mounting = Mounting(Dock.OneBoat().With(InAir("2026-02-01T10:00", 6040, 120, 15, 1013.25, 0)));
        Assert.Equal(BandState.AboveTop, mounting.Band.State);
        Assert.Equal(6040, mounting.Band.ObservedRpm);
        Assert.Equal(6040 * 0.98204, mounting.Band.ReferenceRpm!.Value, 0.5); // 5932: in band, and told beside
    }

    [Fact]
    public void A_line_of_readings_at_reference_air_sets_those_aside_whose_air_nobody_read()
    {
        var mounting = Mounting(Dock.OneBoat().With(
            Normalised("2026-02-01T10:00", 5520, 120),
            InAir("2026-03-01T10:00", 5500, 140, 25, 1000, 30),
            Normalised("2026-04-01T10:00", 5525, 160),
            Dock.Trial("2026-05-01T10:00", 5600, 180)));
        Assert.True(mounting.AtReference);
        Assert.Equal([null, null, null, SetAsideReason.OtherConditions], mounting.Trials.Select(t => t.SetAside));
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)] // as many: as read
    [InlineData(3, true)]
    public void The_line_is_at_reference_air_when_most_trials_could_be_brought_there(int withAir, bool atReference)
    {
        string[] days = ["2026-02-01", "2026-03-01", "2026-04-01", "2026-05-01"];
        var trials = days.Select((d, i) => i < withAir
            ? InAir(d + "T10:00", 5500 + (20 * i), 120 + (20 * i), 15, 1013.25, 0)
            : Dock.Trial(d + "T10:00", 5500 + (20 * i), 120 + (20 * i)));
        var mounting = Mounting(Dock.OneBoat().With([.. trials]));
        Assert.Equal(atReference, mounting.AtReference);
        Assert.Equal(atReference ? withAir : 4, mounting.Trials.Count(t => t.SetAside is null));
        Assert.Equal(atReference ? 5500 * 0.98204 : 5500, mounting.BaselineRpm!.Value, 0.5);
    }

    [Fact]
    public void A_first_check_of_the_gauge_says_what_it_always_showed_and_is_no_drift()
    {
        // 5100 shown where an instrument counted 5000: 2 % high, before as after.
        var fleet = Dock.OneBoat().With(
            InAir("2026-02-01T10:00", 5508, 120, 25, 1000, 30),
            InAir("2026-02-05T10:00", 5508, 140, 25, 1000, 30),
            new CheckTachometer(Dock.At("2026-02-10T10:00", "check"), "e1", 5100, 5000),
            InAir("2026-02-20T10:00", 5508, 160, 25, 1000, 30));
        var mounting = Mounting(fleet);
        Assert.All(mounting.Trials, t => Assert.Equal(5400, t.TurnedRpm, 1e-9));
        Assert.All(mounting.Trials, t => Assert.Equal(5508, t.Rpm));
        Assert.All(mounting.Trials, t => Assert.Contains(TrialDoubt.TachometerCorrected, t.Flags));
        Assert.Empty(mounting.Steps);
    }

    [Fact]
    public void Checks_that_agree_within_the_gauges_step_move_no_trial()
    {
        var fleet = new Fleet().With(Dock.Boat(), Dock.Engine() with { TachometerStepRpm = 100 }, Dock.Fitted(), Dock.Prop(), Dock.Mounted()).With(
            Dock.Trial("2026-02-01T10:00", 5500, 120),
            new CheckTachometer(Dock.At("2026-02-10T10:00", "one"), "e1", 5000, 5000),
            Dock.Trial("2026-02-20T10:00", 5500, 140),
            new CheckTachometer(Dock.At("2026-03-10T10:00", "two"), "e1", 5090, 5000),
            Dock.Trial("2026-03-20T10:00", 5500, 160));
        var mounting = Mounting(fleet);
        Assert.Empty(mounting.Steps);
        Assert.All(mounting.Trials, t => Assert.Equal(5500 / 1.009, t.TurnedRpm, 1e-6)); // the mean of 0 and 1.8 %
    }

    [Fact]
    public void A_gauge_that_reads_low_does_not_hide_that_a_boat_is_over_its_band() // 4850 shown at 5000: 5900 is 6082
    {
        var fleet = Dock.OneBoat().With(
            new CheckTachometer(Dock.At("2026-01-10T10:00", "check"), "e1", 4850, 5000),
            Dock.Trial("2026-02-01T10:00", 5900, 120));
        var band = Mounting(fleet).Band;
        Assert.Equal(BandState.AboveTop, band.State);
        Assert.Equal(5900 / 0.97, band.ObservedRpm!.Value, 1e-6);
        Assert.Equal(5900, band.GaugeRpm);
        Assert.Contains("Over-revving: 6082 RPM at wide-open throttle (the gauge showed 5900), 82 above the top", Attentions.Of(fleet.Finding(), null).Single(a => a.Kind == AttentionKind.OutsideBand).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_that_shows_twice_the_truth_is_not_believed() =>
        Assert.Equal(SetAsideReason.NotCredible, Mounting(Dock.OneBoat().With(
            new CheckTachometer(Dock.At("2026-01-10T10:00", "check"), "e1", 6000, 3000),
            Dock.Trial("2026-02-01T10:00", 5900, 120))).Trials.Single().SetAside);

    [Fact]
    public void A_trial_whose_prop_drew_air_is_set_aside()
    {
        var trial = Dock.Trial("2026-02-01T10:00", 5990, 120);
        var ventilated = trial with { Runs = [.. trial.Runs!.Select(r => r with { Tachometers = [.. r.Tachometers!.Select(t => t with { Ventilated = true })] })] };
        Assert.Equal(SetAsideReason.Ventilated, Mounting(Dock.OneBoat().With(ventilated)).Trials.Single().SetAside);
    }

    [Fact]
    public void A_line_at_reference_air_that_lies_over_the_band_is_not_told_as_what_the_engine_turned()
    {
        var fleet = Dock.OneBoat().With(
            InAir("2026-02-01T10:00", 5900, 120, 35, 1005, 80),
            InAir("2026-02-11T10:00", 5900, 140, 35, 1005, 80),
            InAir("2026-02-21T10:00", 5900, 160, 35, 1005, 80));
        var told = Attentions.Of(fleet.Finding(), null).Single(a => a.Kind == AttentionKind.OutsideBand).Sentence;
        Assert.StartsWith("Over-revving by its trials together: 6027 RPM at reference air, 27 above the top (6000) of its band. The last of them read 5900.", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trial_with_a_full_load_is_marked_against_the_first_one()
    {
        var trials = Mounting(Dock.OneBoat().With(
            Dock.Trial("2026-02-01T10:00", 5500, 120) with { People = 2, LoadKilograms = 20 },
            Dock.Trial("2026-03-01T10:00", 5380, 140) with { People = 6, LoadKilograms = 150 })).Trials;
        Assert.DoesNotContain(TrialDoubt.LoadUnlike, trials[0].Flags);
        Assert.Contains(TrialDoubt.LoadUnlike, trials[1].Flags);
    }

    /// <summary>The same prop with four people more at every second trial: a rougher line, and no drift.</summary>
    [Fact]
    public void A_load_that_was_told_is_taken_off_the_level_it_is_held_against()
    {
        (double, double)[] trials = [.. Enumerable.Range(0, 8).Select(i => (100.0 + (40 * i), i < 4 ? 5420.0 : 5530.0))];
        MountingFinding Told(bool loads) => Mounting(Dock.OneBoat().With(trials.Select((t, i) =>
            (ICommand)(Dock.Trial(Trialled.Day(i), t.Item2, t.Item1) with { People = loads && i < 4 ? 6 : 2 }))));
        Assert.True(Told(loads: true).Drift!.Value < 0.6 * Told(loads: false).Drift!.Value, $"{Told(true).Drift} {Told(false).Drift}");
        Assert.True(Told(loads: true).Watch!.EvidenceToOne < Told(loads: false).Watch!.EvidenceToOne);
    }

    private static RunTrial InAir(string time, double rpm, double hours, double celsius, double hectopascals, double humidity) =>
        Dock.Trial(time, rpm, hours) with { AirTemperatureCelsius = celsius, PressureHectopascals = hectopascals, HumidityPercent = humidity };

    private static ReadNormalisedRpm Normalised(string time, double rpm, double hours) => new(Dock.At(time, "normalised " + time), Dock.Kea, "single", rpm, hours);

    private static MountingFinding Mounting(Fleet fleet) => fleet.Finding().Positions.Single().Mounting!;
}
