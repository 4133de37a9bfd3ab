using CsCheck;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

public class Refused_trials
{
    private static readonly TrialReading s_usual = ATrial.Usual;

    private static readonly Dictionary<string, (TrialReading Trial, string Range)> s_bad = new()
    {
        ["Runs"] = (s_usual with { Runs = [] }, "from 1 to 200 runs"),
        ["Runs[1].Engine"] = (Second(run => run with { Engine = default }), "above 0 and up to 20000 rev/min"),
        ["Runs[1].Speed"] = (Second(run => run with { Speed = Speed.FromKnots(-1) }), "from 0 to 200 kn"),
        ["Runs[1].HeadingDegrees"] = (Second(run => run with { HeadingDegrees = double.NaN }), "finite"),
        ["Runs[1].RpmScatter"] = (Second(run => run with { RpmScatter = -1 }), "from 0 to 5000 rev/min"),
        ["Runs[1].SpeedScatterKnots"] = (Second(run => run with { SpeedScatterKnots = double.NaN }), "from 0 to 50 kn"),
        ["Runs[1].Held"] = (Second(run => run with { Held = TimeSpan.FromSeconds(-5) }), "from 0 to 86400 s"),
        ["Prop.Pitch"] = (s_usual with { Prop = new PropData(default) }, "above 0 and up to 3 m"),
        ["Engine.Gear"] = (
            s_usual with { Engine = ATrial.Engine with { Gear = default(GearRatio) } }, "above 0 and up to 20"),
        ["Engine.TachometerStep"] = (
            s_usual with { Engine = ATrial.Engine with { TachometerStep = EngineRate.FromRevolutionsPerMinute(600) } },
            "from 0 to 500 rev/min"),
        ["Engine.TachometerError"] = (
            s_usual with { Engine = ATrial.Engine with { TachometerError = new Uncertain(2, 0.01) } }, "from -0.5 to 0.5"),
        ["Engine.TachometerError.StandardDeviation"] = (
            s_usual with { Engine = ATrial.Engine with { TachometerError = new Uncertain(0.02, double.NaN) } },
            "from 0 to 0.5"),
        ["Engine.Breathing"] = (
            s_usual with { Engine = ATrial.Engine with { Breathing = (AirResponse)5 } }, "declared"),
        ["Conditions.TrimDegrees"] = (
            s_usual with { Conditions = new TrialConditions { TrimDegrees = double.NaN } }, "from -90 to 90 degrees"),
        ["Baseline.TrimDegrees"] = (
            s_usual with { Baseline = new TrialConditions { TrimDegrees = 120 } }, "from -90 to 90 degrees"),
        ["Response.Gain"] = (
            s_usual with { Response = new BoatResponse(new Uncertain(-0.4, 0.1), new Uncertain(1.2, 0.1)) }, "from 0 to 2"),
        ["Response.Kappa"] = (
            s_usual with { Response = new BoatResponse(new Uncertain(0.4, 0.1), new Uncertain(12, 0.1)) }, "from 0 to 3"),
        ["StationPressure"] = (s_usual.In(ATrial.Air(20, 300, 0.5)), "from 500 to 1100 hPa"),
        ["Temperature"] = (s_usual.In(ATrial.Air(70, 1013, 0.5)), "from -40 to 60 deg C"),
        ["RelativeHumidityFraction"] = (s_usual.In(ATrial.Air(20, 1013, 70)), "from 0 to 1"),
    };

    public static TheoryData<string> Fields => [.. s_bad.Keys];

    [Theory]
    [MemberData(nameof(Fields))]
    public void What_cannot_be_is_refused_with_field_value_and_range(string field)
    {
        var (trial, range) = s_bad[field];
        var refused = Assert.Throws<ArgumentOutOfRangeException>(field, () => trial.Corrected());
        Assert.Contains(range, refused.Message, StringComparison.Ordinal);
        Assert.NotNull(refused.ActualValue);
    }

    [Fact]
    public void A_log_of_201_runs_is_no_trial() => Assert.Throws<ArgumentOutOfRangeException>(
        "Runs", () => ATrial.Of([.. Enumerable.Repeat(s_usual.Runs[0], 201)]).Corrected());

    [Fact]
    public void Nothing_is_refused_as_nothing()
    {
        Assert.Throws<ArgumentNullException>("reading", () => TrialCorrection.Of(null!));
        Assert.Throws<ArgumentException>("Runs[0]", () => ATrial.Of([null!]).Corrected());
    }

    [Fact]
    public void Whatever_is_not_refused_has_numbers_and_doubts_that_are_finite() => Gen.Select(
        Gen.Select(Gen.Double[1, 20_000], Gen.Double[0, 200], Gen.Double[-720, 720]).Array[1, 9],
        Gen.Select(Gen.Double[-40, 60], Gen.Double[500, 1100], Gen.Double[0, 1]),
        Gen.Select(Gen.Double[0, 2], Gen.Double[0, 3]),
        Gen.Double[0.01, 3]).Sample((runs, air, response, pitch) =>
        {
            var trial = (ATrial.Of([.. runs.Select(run => ATrial.Run(run.Item1, run.Item2, run.Item3))]) with
            {
                Prop = new PropData(Length.FromMetres(pitch)),
                Response = new BoatResponse(new Uncertain(response.Item1, 0.1), new Uncertain(response.Item2, 0.1)),
            }).In(ATrial.Air(air.Item1, air.Item2, air.Item3)).Corrected();
            foreach (var number in new[]
            {
                trial.Rpm, trial.SpeedKnots!.Value, trial.SlipFraction!.Value, trial.CorrectedRpm, trial.CorrectedSpeedKnots!.Value,
            })
            {
                Assert.True(double.IsFinite(number.Value));
                Assert.True(double.IsFinite(number.StandardDeviation) && number.StandardDeviation >= 0);
            }
        });

    private static TrialReading Second(Func<RunReading, RunReading> change) =>
        s_usual with { Runs = [s_usual.Runs[0], change(s_usual.Runs[1])] };
}
