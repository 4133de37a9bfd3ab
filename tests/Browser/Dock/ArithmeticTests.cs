using System.Text.Json;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;
using FleetWake.Web.Dock;
using FleetWake.Web.Frame;
using System.Text.RegularExpressions;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>What the phone says on the water is what the office will find.</summary>
[Collection(AtOldMole.Name)]
public sealed partial class ArithmeticTests(OldMole dock)
{
    private static readonly string[] Units = ["kn", "mph", "km_per_h", "m_per_s"];

    [Fact]
    public async Task The_phones_arithmetic_is_the_offices_to_a_millionth()
    {
        var dice = new Random(6);
        var cases = Enumerable.Range(0, 300).Select(_ => Case.Of(dice)).ToList();
        var page = await (await dock.Fleet.WindowAsync()).NewPageAsync();
        await page.GotoAsync("/dock/enrol");
        var answers = await page.EvaluateAsync<JsonElement>(
            "async ([module, cases]) => { const { workOut, toKnots } = await import(module); return cases.map(c => workOut({ ...c, runs: c.runs.map(r => ({ ...r, speedKnots: toKnots(r.speed, r.unit) })) })); }",
            new object[] { AssetFiles.Url("dock/trial-arithmetic.js"), cases.Select(c => c.ToPhone()).ToArray() });
        foreach (var (told, answer) in cases.Zip(answers.EnumerateArray()))
        {
            var trial = TrialCorrection.Of(told.Reading);
            Same(trial.Rpm.Value, answer.GetProperty("rpm").GetDouble());
            Same(trial.CorrectedRpm.Value, answer.GetProperty("corrected").GetDouble());
            Same(trial.SpeedKnots!.Value.Value, answer.GetProperty("knots").GetDouble());
            Same(1 - trial.SlipFraction!.Value.Value, 1 - answer.GetProperty("slip").GetDouble());
            Assert.Equal(trial.Method.ToString(), answer.GetProperty("method").GetString()!.Replace("_", "", StringComparison.Ordinal), ignoreCase: true);
            Assert.Equal(trial.Correction is not null, answer.GetProperty("applied").GetBoolean());
            if (trial.Correction is { } correction) Same(correction.Factor.Value, answer.GetProperty("factor").GetDouble());
        }

        Assert.Contains(answers.EnumerateArray(), a => !a.GetProperty("applied").GetBoolean());
    }

    [Fact]
    public void Every_word_that_the_pages_name_stands_in_the_texts()
    {
        var known = PageTexts.English.Keys.ToHashSet(StringComparer.Ordinal);
        foreach (var name in AssetFiles.Names.Where(n => n.StartsWith("dock/", StringComparison.Ordinal) && n.EndsWith(".js", StringComparison.Ordinal)))
        {
            var code = System.Text.Encoding.UTF8.GetString(AssetFiles.Bytes(name));
            foreach (Match key in Key().Matches(code))
                Assert.True(key.Groups[1].Value.EndsWith('_') ? known.Any(k => k.StartsWith(key.Groups[1].Value, StringComparison.Ordinal)) : known.Contains(key.Groups[1].Value), $"{name} names {key.Groups[1].Value}");
            foreach (Match key in Counted().Matches(code)) Assert.Contains(key.Groups[1].Value + "_one", known);
        }
    }

    private static void Same(double office, double phone) => Assert.InRange(phone, office - (1e-6 * Math.Abs(office)), office + (1e-6 * Math.Abs(office)));

    [GeneratedRegex(@"'(dock(?:-[a-z]+)?\.[a-z_0-9]+)'")]
    private static partial Regex Key();

    [GeneratedRegex(@"count\('(dock(?:-[a-z]+)?\.[a-z_0-9]+)'")]
    private static partial Regex Counted();

    /// <summary>A trial as both are told it.</summary>
    private sealed record Case(List<(double Speed, string Unit, double Heading, double Rpm)> Runs, bool Part, double Gear, double Pitch, double Error, double Celsius, double? Hectopascals, double? Humidity, double Gain)
    {
        public TrialReading Reading => new(
            [.. Runs.Select(r => new RunReading(EngineRate.FromRevolutionsPerMinute(r.Rpm), RunTrial.In(r.Speed, (SpeedUnit)Array.IndexOf(Units, r.Unit)), r.Heading))],
            new TrialConditions { Air = new AirState(Temperature.FromCelsius(Celsius), Hectopascals is { } p ? Pressure.FromHectopascals(p) : null, Humidity) },
            new EngineData { Gear = new GearRatio(Gear), TachometerError = new Uncertain(Error, 0.002), TachometerStep = EngineRate.FromRevolutionsPerMinute(10), Breathing = AirResponse.NaturallyAspirated },
            new PropData(Length.FromInches(Pitch)))
        {
            PartThrottle = Part,
            Response = new BoatResponse(new Uncertain(Gain, 0.07), BoatResponse.Prior.Kappa),
        };

        public static Case Of(Random dice)
        {
            var first = dice.NextDouble() * 360;
            var count = dice.Next(1, 6);
            return new Case(
                [.. Enumerable.Range(0, count).Select(i => (15 + (dice.NextDouble() * 25), Units[dice.Next(4)], Math.Round(((first + (i % 2 * 180) + (dice.NextDouble() * (dice.Next(4) == 0 ? 90 : 25))) % 360), 1), 4500 + Math.Round(dice.NextDouble() * 1800)))],
                dice.Next(5) == 0, 1.8 + dice.NextDouble(), 9 + (dice.NextDouble() * 12), (dice.NextDouble() - 0.5) * 0.05, -10 + (dice.NextDouble() * 50),
                dice.Next(3) == 0 ? null : 820 + (dice.NextDouble() * 220), dice.Next(3) == 0 ? null : dice.NextDouble(), 0.1 + (dice.NextDouble() * 0.4));
        }

        public object ToPhone()
        {
            var missing = AirAssumptions.Of(AirState.Unknown);
            return new
            {
                runs = Runs.Select(r => new { speed = r.Speed, unit = r.Unit, heading = r.Heading, rpm = r.Rpm }),
                part = Part,
                gearRatio = Gear,
                pitchInches = Pitch,
                tachometerErrorPercent = Error * 100,
                celsius = Celsius,
                hectopascals = Hectopascals,
                humidity = Humidity,
                reference = new { gain = Gain, lowestFactor = PowerCorrections.LowestValid, highestFactor = PowerCorrections.HighestValid, missing = new { pressureHPa = missing.Pascals.Value / 100, relativeHumidity = missing.HumidityFraction.Value } },
            };
        }
    }
}
