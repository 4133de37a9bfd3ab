using CsCheck;
using FleetWake.Propulsion.Advice;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Tests.Advice;

/// <summary>Which pitch puts a boat into its band. Invented boats; what is expected is computed by hand where it says so.</summary>
public class Which_pitch
{
    private static readonly PitchQuestion s_overRevving = new()
    {
        FittedPitch = Length.FromInches(19),
        CorrectedRpm = new Uncertain(6150, 40),
        BandLow = EngineRate.FromRevolutionsPerMinute(5000),
        BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
        Available = [.. new[] { 17, 18, 20, 21, 22, 23 }.Select(p => Length.FromInches(p))],
    };

    /// <summary>By hand: 6150 (21/19)^-0.73 = 5716; (40/6150)^2 + (0.15 ln(21/19))^2 + 2 (0.73 x 0.015)^2 = 0.02253^2, both props being off their stamps.</summary>
    [Fact]
    public void A_pitch_lands_where_the_formula_says()
    {
        var landing = PitchAdvice.Of(s_overRevving).Rows.Single(r => r.Pitch.Inches == 21).Landings.Single();
        Assert.Equal(5716.4, landing.Rpm.Value, 0.5);
        Assert.Equal(0.02253 * 5716.4, landing.Rpm.StandardDeviation, 0.2);
        Assert.Equal(0.984, landing.InBand, 1e-3); // P((ln 6000 - ln 5716.4)/0.02253) = P(2.149)
        Assert.Equal(1, landing.InBand + landing.AboveTop + landing.BelowBottom, 1e-12);
    }

    [Fact]
    public void A_prop_that_is_right_at_reference_air_and_not_on_a_cold_day_is_not_advised()
    {
        var question = s_overRevving with { CorrectedRpm = new Uncertain(5800, 40), Available = [Length.FromInches(19)] };
        Assert.Equal(PitchVerdict.MayOverRev, PitchAdvice.Of(question).Rows[0].Verdict);
        var never = PitchAdvice.Of(question with { LnDensestAir = 0 });
        Assert.Equal(PitchVerdict.Advised, never.Rows[0].Verdict);
        Assert.Equal(0, never.DenseAirRpm);
    }

    /// <summary>
    /// By hand: 5800 exp(0.38 x 0.0619 + 2 ((40/5800)^2 + (0.10 x 0.0619)^2)^0.5) = 5800 exp(0.02351 + 0.01854) = 6049. The gate and the
    /// chance agree: two deviations of a logarithm, not of the number.
    /// </summary>
    [Fact]
    public void What_must_stay_below_the_top_is_two_deviations_above_the_RPM_of_a_cold_day()
    {
        var table = PitchAdvice.Of(s_overRevving with { CorrectedRpm = new Uncertain(5800, 40) });
        var fitted = table.Rows.Single(r => r.Fitted).Landings[0];
        Assert.Equal(6049, fitted.HighestRpm, 1.0);
        Assert.Equal(5800 * (Math.Exp(0.02351) - 1), table.DenseAirRpm, 0.1);
        Assert.Equal(5800 * Math.Exp(2 * 40 / 5800.0), fitted.At(2), 1e-9);
        Assert.Equal(0.94, PowerCorrections.Of(new AirState(Temperature.FromCelsius(10), Pressure.FromHectopascals(1025), 0.75)).Factor.Value, 0.002);
    }

    /// <summary>An engine that gains much in cold air is held back much by pitch, so that the two doubts partly cancel above the fitted pitch and add below it.</summary>
    [Fact]
    public void The_doubts_of_gain_and_pitch_go_together()
    {
        PitchLanding At(double inches) => PitchAdvice.Of(s_overRevving).Rows.Single(r => Math.Abs(r.Pitch.Inches - inches) < 1e-6).Landings[0];
        double Wider(PitchLanding at) => Math.Log(at.HighestRpm / at.At(2)) - (0.38 * -Math.Log(0.94));
        Assert.InRange(Wider(At(22)), -0.02, 0);
        Assert.InRange(Wider(At(17)), 0.004, 0.02);
    }

    /// <summary>A boat of a dock with a checked gauge, a light and a heavy use and whole inches to be had.</summary>
    [Fact]
    public void A_usual_boat_still_gets_advice()
    {
        var table = PitchAdvice.Of(s_overRevving with { Loads = [LoadCase.Usual, LoadCase.OfDisplacement("light", -0.08), LoadCase.OfDisplacement("heavy", 0.15)] });
        Assert.NotNull(table.Advised);
        Assert.True(table.Advised.Landings[0].InBand > 0.95);
    }

    [Fact]
    public void An_advised_prop_that_lugs_at_another_load_says_so()
    {
        var table = PitchAdvice.Of(s_overRevving with
        {
            CorrectedRpm = new Uncertain(5200, 40),
            Available = [Length.FromInches(19)],
            Loads = [LoadCase.Usual, new("heavy", new Uncertain(-0.06, 0.01))],
        });
        Assert.Equal(["heavy"], table.Advised!.LugsAt);
    }

    [Fact]
    public void The_table_holds_every_pitch_once_the_lowest_first_and_the_fitted_one_too()
    {
        var rows = PitchAdvice.Of(s_overRevving).Rows;
        Assert.Equal([17.0, 18, 19, 20, 21, 22, 23], rows.Select(r => Math.Round(r.Pitch.Inches, 9)));
        Assert.Equal(19, rows.Single(r => r.Fitted).Pitch.Inches);
    }

    [Fact]
    public void No_pitch_is_advised_whose_RPM_may_exceed_the_top_in_any_use() => Questions().Sample(question =>
    {
        var table = PitchAdvice.Of(question);
        foreach (var row in table.Rows)
        {
            var over = row.Landings.Any(l => l.HighestRpm > question.BandHigh.RevolutionsPerMinute);
            Assert.Equal(over, row.Verdict == PitchVerdict.MayOverRev);
            Assert.All(row.Landings, l => Assert.True(row.Pitch.Metres > question.FittedPitch.Metres || l.HighestRpm > l.At(2), "cold air makes no prop slower"));
            if (row.Verdict == PitchVerdict.Advised) Assert.True(row.Landings[0].Rpm.Value >= question.BandLow.RevolutionsPerMinute);
        }

        Assert.True(table.Rows.Count(r => r.Verdict == PitchVerdict.Advised) == (table.Advised is null ? 0 : 1));
    });

    [Fact]
    public void More_pitch_is_never_expected_to_turn_faster() => Questions().Sample(question =>
    {
        var rpm = PitchAdvice.Of(question).Rows.Select(r => r.Landings[0].Rpm.Value).ToList();
        Assert.Equal(rpm.OrderDescending(), rpm);
    });

    [Fact]
    public void An_engine_over_its_band_has_causes_to_be_ruled_out_before_more_pitch()
    {
        var table = PitchAdvice.Of(s_overRevving);
        Assert.Equal([Cause.PitchOrCupLoss, Cause.DiameterLoss, Cause.HubSlip, Cause.Ventilation, Cause.LighterLoad], table.FirstRuleOut);
        Assert.True(table.Advised!.Pitch.Inches >= 20.99);
        Assert.Equal(PitchVerdict.MayOverRev, table.Rows.Single(r => r.Fitted).Verdict);
    }

    [Fact]
    public void An_engine_that_lugs_has_others()
    {
        var table = PitchAdvice.Of(s_overRevving with { CorrectedRpm = new Uncertain(4800, 40) });
        Assert.Equal([Cause.HullOrLoad, Cause.EnginePower, Cause.BladeRoughness], table.FirstRuleOut);
        Assert.Equal(PitchVerdict.Lugs, table.Rows.Single(r => r.Fitted).Verdict);
        Assert.True(table.Advised!.Pitch.Inches < 19);
    }

    [Fact]
    public void More_pitch_for_a_margin_has_the_same_causes_to_be_ruled_out_first()
    {
        var table = PitchAdvice.Of(s_overRevving with { CorrectedRpm = new Uncertain(5800, 40) }); // in band, a cold day reaches over it
        Assert.False(table.Advised!.Fitted);
        Assert.Equal([Cause.PitchOrCupLoss, Cause.DiameterLoss, Cause.HubSlip, Cause.Ventilation, Cause.LighterLoad], table.FirstRuleOut);
    }

    [Fact]
    public void A_prop_in_the_middle_of_the_band_stays_on()
    {
        var table = PitchAdvice.Of(s_overRevving with { CorrectedRpm = new Uncertain(5500, 40) });
        Assert.True(table.Advised!.Fitted);
        Assert.Empty(table.FirstRuleOut);
    }

    [Fact]
    public void Where_no_pitch_to_be_had_keeps_the_rules_none_is_advised()
    {
        var table = PitchAdvice.Of(s_overRevving with { Available = [Length.FromInches(18)] });
        Assert.Null(table.Advised);
        Assert.All(table.Rows, row => Assert.Equal(PitchVerdict.MayOverRev, row.Verdict));
    }

    /// <summary>wot_elasticities.csv: 10 % of displacement is -37 (Savitsky) to -103 rpm of 5500 (resistance as weight); computed.</summary>
    [Fact]
    public void A_tenth_more_displacement_costs_what_the_table_has()
    {
        var heavy = LoadCase.OfDisplacement("heavy", 0.1).LnRpm;
        Assert.InRange(5500 * heavy.Value, -103, -37);
        Assert.InRange(5500 * heavy.High(2), -40, 0);
        Assert.InRange(5500 * heavy.Low(2), -130, -100);
    }

    /// <summary>By hand: ln N moves by -g ln CF, 0.38 x 0.05 = 0.019.</summary>
    [Fact]
    public void A_dock_in_the_mountains_is_a_use_like_another()
    {
        var use = LoadCase.OfAir("lake", 0.05, new Uncertain(0.38, 0.10)).LnRpm;
        Assert.Equal(-0.019, use.Value, 1e-12);
        Assert.Equal(0.005, use.StandardDeviation, 1e-12);
    }

    /// <summary>wot_elasticities.csv: an inch of diameter is -153 to -323 rpm on the boat of 17 in pitch at 5500; a fourth blade -66 to -126. Computed.</summary>
    [Fact]
    public void Other_changes_are_ranges_that_hold_what_the_series_say()
    {
        var question = s_overRevving with { FittedPitch = Length.FromInches(17), CorrectedRpm = new Uncertain(5500, 40) };
        var (lowest, highest) = RoughAdvice.RpmOfAnInchOfDiameter(question);
        Assert.True(lowest < -323 && highest > -200 && highest < 0);
        var (least, most) = RoughAdvice.RpmOfAFourthBlade(5500, 3)!.Value;
        Assert.True(least < -126 && most > -66);
        Assert.Null(RoughAdvice.RpmOfAFourthBlade(5500, 4));
        Assert.True(RoughAdvice.RpmOfStainless(5500) is ( < 0, > 0));
    }

    [Fact]
    public void A_question_that_cannot_be_is_refused_by_its_member()
    {
        void Refused(string member, PitchQuestion question) => Assert.Throws<ArgumentOutOfRangeException>(member, () => PitchAdvice.Of(question));
        Refused("FittedPitch", s_overRevving with { FittedPitch = default });
        Refused("CorrectedRpm", s_overRevving with { CorrectedRpm = new Uncertain(double.NaN, 1) });
        Refused("CorrectedRpm", s_overRevving with { CorrectedRpm = new Uncertain(5500, -1) });
        Refused("BandHigh", s_overRevving with { BandHigh = s_overRevving.BandLow });
        Refused("Available", s_overRevving with { Available = [] });
        Refused("Available", s_overRevving with { Available = [default] });
        Refused("Loads", s_overRevving with { Loads = [new("odd", new Uncertain(double.NaN, 0))] });
        Refused("PitchElasticity", s_overRevving with { PitchElasticity = new Uncertain(0.5, 0.1) });
        Refused("LnDensestAir", s_overRevving with { LnDensestAir = 0.06 });
        Refused("LnDensestAir", s_overRevving with { LnDensestAir = double.NaN });
        Refused("Gain", s_overRevving with { Gain = new Uncertain(0, 0.1) });
        Refused("PitchBetweenProps", s_overRevving with { PitchBetweenProps = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>("share", () => LoadCase.OfDisplacement("x", -0.9));
    }

    private static Gen<PitchQuestion> Questions() =>
        Gen.Select(Gen.Double[4500, 6600], Gen.Double[0, 150], Gen.Int[7, 25], Gen.Double[-0.05, 0.05], Gen.Double[-1.2, -0.4])
            .Select((rpm, sd, pitch, load, eta) => s_overRevving with
            {
                FittedPitch = Length.FromInches(pitch),
                CorrectedRpm = new Uncertain(rpm, sd),
                Available = [.. Enumerable.Range(pitch - 4, 9).Select(p => Length.FromInches(p))],
                Loads = [LoadCase.Usual, new("other", new Uncertain(load, 0.01))],
                PitchElasticity = new Uncertain(eta, 0.1),
            });
}
