using System.CommandLine;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Logs;
using FleetWake.Propulsion.Trials;
using FleetWake.Reports.Pictures;
using FleetWake.Trials;

namespace FleetWake.Commands;

internal static class TrialCommand
{
    private static readonly Argument<string> s_file = new("file")
    {
        Description = "The trial: a log (NMEA 0183, Signal K deltas, GPX, CSV with times), or runs typed by hand, CSV with one row a run "
            + "(rpm,speed_kn,heading_deg) or JSON with \"runs\". - reads the standard input.",
    };

    private static readonly Option<string?> s_engine = new(EngineOption.Name) { Description = EngineOption.Syntax };
    private static readonly Option<string?> s_prop = new(PropOption.Name) { Description = PropOption.Syntax };
    private static readonly Option<string?> s_air = new(AirOption.Name) { Description = AirOption.Syntax };
    private static readonly Option<string?> s_water = new("--water") { Description = "fresh, salt or brackish." };
    private static readonly Option<string?> s_depth = new("--depth") { Description = "Depth of water, 4m or 12ft." };
    private static readonly Option<string?> s_load = new("--load") { Description = "Mass aboard beside the boat itself, 340kg or 750lb." };
    private static readonly Option<double?> s_trim = new("--trim") { Description = "Trim of the engine in degrees." };
    private static readonly Option<string?> s_rpm = new("--rpm") { Description = "RPM for a log without it, as GPX: one for all runs, 5600, or one for each in the order of time, 5600,5580." };
    private static readonly Option<string?> s_rpmLog = new("--rpm-log") { Description = "A second log that holds the RPM, when another device recorded it; the offset of its clock is found and said." };
    private static readonly Option<string?> s_logEngine = new("--log-engine") { Description = "Which engine of a log of several, as it names it: 1, port." };
    private static readonly Option<string?> s_gain = new("--gain") { Description = "How RPM follows power, g with its standard deviation; 0.38+-0.10 when nothing is learned." };
    private static readonly Option<string?> s_kappa = new("--kappa") { Description = "How speed follows RPM, kappa with its standard deviation; 1.2+-0.12 when nothing is learned." };
    private static readonly Option<bool> s_partThrottle = new("--part-throttle") { Description = "The trial was made at part throttle on plane: slip is told, the band is not." };
    private static readonly Option<bool> s_limiter = new("--limiter") { Description = "The limiter held the engine: the RPM is a lower bound. A log does not say so." };
    private static readonly Option<bool> s_ventilated = new("--ventilated") { Description = "The prop drew air. A log does not say so." };
    private static readonly Option<bool> s_watched = new("--no-ventilation") { Description = "Somebody watched for it, and the prop drew no air: one cause less to tell apart from a worn prop." };
    private static readonly Option<string?> s_format = new("--format") { Description = "What the file is, when its beginning does not tell: nmea, signalk, gpx, csv or json." };
    private static readonly Option<double?> s_shortest = new("--shortest") { Description = "Shortest stretch of a log that counts as a run, in seconds; 15 when not given." };
    private static readonly Option<string?> s_baseline = new("--baseline") { Description = "An earlier trial of the same boat with the same prop, in any of the same forms: says what the change since then points to, and what would tell causes apart." };
    private static readonly Option<string?> s_baselineAir = new("--baseline-air") { Description = "Air at the baseline, as --air." };
    private static readonly Option<string?> s_baselineLoad = new("--baseline-load") { Description = "Load at the baseline, as --load." };
    private static readonly Option<string?> s_picture = new("--picture") { Description = "PNG file to draw the correction in." };
    private static readonly Option<string?> s_causeMap = new("--cause-map") { Description = "PNG file to draw in what the change since the baseline points to." };
    private static readonly Option<bool> s_json = new("--json") { Description = "Print one JSON object." };

    public static Command Make()
    {
        var command = new Command(
            "trial",
            "Says what a sea trial would have read at reference air, how sure that is, and what to doubt. Needs no database. Exit 1 when the file holds no run or an option cannot be read.")
        {
            s_file, s_engine, s_prop, s_air, s_water, s_depth, s_load, s_trim, s_rpm, s_rpmLog, s_logEngine, s_gain, s_kappa, s_partThrottle, s_limiter, s_ventilated, s_watched, s_format, s_shortest, s_baseline, s_baselineAir, s_baselineLoad, s_picture, s_causeMap, s_json,
        };
        command.SetAction(parsed =>
        {
            var request = Request(parsed);
            var options = new LogOptions { Format = Format(parsed.GetValue(s_format)), Engine = parsed.GetValue(s_logEngine), Gear = request.Engine.Gear };
            var file = parsed.GetRequiredValue(s_file);
            var log = Read(file, options);
            // The second log has a format of its own, so that what --format says of the first is not held against it.
            if (parsed.GetValue(s_rpmLog) is { } second) log = TwoLogs.Join(log, Read(second, options with { Format = null }));
            var name = file == "-" ? "the standard input" : Path.GetFileName(file);
            var baseline = Baseline(parsed, request, options);
            var answer = request.Of(log, name, baseline?.Reading.Conditions);
            var compared = baseline is null ? null : Compared.Of(answer, baseline, parsed.GetValue(s_watched));
            Draw(parsed, answer, compared);
            if (parsed.GetValue(s_json)) Console.WriteLine(TrialJson.Of(answer, compared));
            else Console.Write(TrialText.Of(answer, name, compared));
            return 0;
        });
        return command;
    }

    private static TrialAnswer? Baseline(ParseResult parsed, TrialRequest request, LogOptions options)
    {
        if (parsed.GetValue(s_baseline) is not { } file) return null;
        var then = request with
        {
            Air = parsed.GetValue(s_baselineAir) is { } air ? AirOption.Read(air) : null,
            Load = parsed.GetValue(s_baselineLoad) is { } load ? Measure.Load("--baseline-load", load) : null,
            LimiterReached = false,
            Ventilated = false,
        };
        return then.Of(Read(file, options with { Format = null }), Path.GetFileName(file));
    }

    private static void Draw(ParseResult parsed, TrialAnswer answer, Compared? compared)
    {
        if (parsed.GetValue(s_picture) is { } picture)
            File.WriteAllBytes(picture, new PngRenderer().Render(CorrectionPicture.Of(answer.Reading, answer.Trial)));
        if (parsed.GetValue(s_causeMap) is not { } map) return;
        if (compared is null) throw new CommandException("--cause-map shows a change: name the trial to hold this one against with --baseline.");
        if (compared.Held is not { } held || CauseMap.Of(held) is not { } drawn) throw new CommandException($"--cause-map: not drawn; {compared.Why ?? "no speed was read"}.");
        File.WriteAllBytes(map, new PngRenderer().Render(drawn));
    }

    private static TrialRequest Request(ParseResult parsed)
    {
        var prior = BoatResponse.Prior;
        return new TrialRequest(
            parsed.GetValue(s_engine) is { } engine ? EngineOption.Read(engine) : new EngineData(),
            parsed.GetValue(s_prop) is { } prop ? PropOption.Read(prop) : null)
        {
            Air = parsed.GetValue(s_air) is { } air ? AirOption.Read(air) : null,
            Water = parsed.GetValue(s_water) is { } water ? WaterOf(water) : null,
            Depth = parsed.GetValue(s_depth) is { } depth ? Measure.Depth("--depth", depth) : null,
            Load = parsed.GetValue(s_load) is { } load ? Measure.Load("--load", load) : null,
            TrimDegrees = parsed.GetValue(s_trim) is not { } trim ? null
                : trim is >= -20 and <= 40 ? trim : throw new CommandException($"--trim {OptionParts.Show(trim)} is not -20 to 40 degrees."),
            PartThrottle = parsed.GetValue(s_partThrottle),
            LimiterReached = parsed.GetValue(s_limiter),
            Ventilated = parsed.GetValue(s_ventilated),
            Response = new BoatResponse(
                parsed.GetValue(s_gain) is { } gain ? Measure.WithDoubt("--gain", gain, 0, 1) : prior.Gain,
                parsed.GetValue(s_kappa) is { } kappa ? Measure.WithDoubt("--kappa", kappa, 0, 3) : prior.Kappa),
            Rpm = parsed.GetValue(s_rpm) is { } rpm ? [.. rpm.Split(',', StringSplitOptions.TrimEntries).Select(Rate)] : [],
            Rules = parsed.GetValue(s_shortest) is not { } shortest ? PlateauRules.Usual
                : shortest is >= 5 and <= 3600 ? PlateauRules.Usual with { Shortest = TimeSpan.FromSeconds(shortest) }
                : throw new CommandException($"--shortest {OptionParts.Show(shortest)} is not 5 to 3600 seconds."),
        };
    }

    private static EngineRate Rate(string text) => OptionParts.ReadNumber(text) is { } rpm and >= 300 and <= 20_000
        ? EngineRate.FromRevolutionsPerMinute(rpm)
        : throw new CommandException($"--rpm \"{text}\" is not a number from 300 to 20000, or several separated by commas.");

    private static Water WaterOf(string text) => text.ToUpperInvariant() switch
    {
        "FRESH" => Water.Fresh,
        "SALT" => Water.Salt,
        "BRACKISH" => Water.Brackish,
        _ => throw new CommandException($"--water \"{text}\" is not fresh, salt or brackish."),
    };

    private static LogFormat? Format(string? text) => text?.ToUpperInvariant() switch
    {
        null => null,
        "NMEA" => LogFormat.Nmea0183,
        "SIGNALK" => LogFormat.SignalK,
        "GPX" => LogFormat.Gpx,
        "CSV" => LogFormat.Csv,
        "JSON" => LogFormat.TypedJson,
        _ => throw new CommandException($"--format \"{text}\" is not nmea, signalk, gpx, csv or json."),
    };

    private static TrialLog Read(string file, LogOptions options)
    {
        if (file == "-") return TrialLog.Read(Console.In, options);
        using var text = new StreamReader(file);
        return TrialLog.Read(text, options);
    }
}
