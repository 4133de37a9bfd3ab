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
    private static readonly Option<double?> s_trim = new("--trim") { Description = "Trim of the engine in degrees, -30 to 90; out is positive." };
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
    private static readonly Option<string?> s_baseline = new("--baseline")
    {
        Description = "An earlier trial of the same boat with the same prop, in any of the same forms: says what the change since then points to, and what would tell causes apart. "
            + "Its air, load, trim and RPM have options of their own; water, depth, engine and prop count as the trial's."
    };
    private static readonly Option<string?> s_baselineAir = new("--baseline-air") { Description = "Air at the baseline, as --air." };
    private static readonly Option<string?> s_baselineLoad = new("--baseline-load") { Description = "Load at the baseline, as --load." };
    private static readonly Option<double?> s_baselineTrim = new("--baseline-trim") { Description = "Trim at the baseline, as --trim." };
    private static readonly Option<string?> s_baselineRpm = new("--baseline-rpm") { Description = "RPM for a baseline without it, as --rpm, which is never taken for the baseline." };
    private static readonly Option<string?> s_picture = new("--picture") { Description = "PNG file to draw the correction in." };
    private static readonly Option<string?> s_causeMap = new("--cause-map") { Description = "PNG file to draw in what the change since the baseline points to." };
    private static readonly Option<bool> s_json = new("--json") { Description = "Print one JSON object." };

    public static Command Make()
    {
        var command = new Command(
            "trial",
            "Says what a sea trial would have read at reference air, how sure that is, and what to doubt. Needs no database. "
            + "Exit 1 when a file holds no run, an option cannot be read, or a picture that was asked for was not made; the answer is printed before a picture is tried.")
        {
            s_file, s_engine, s_prop, s_air, s_water, s_depth, s_load, s_trim, s_rpm, s_rpmLog, s_logEngine, s_gain, s_kappa, s_partThrottle, s_limiter, s_ventilated, s_watched, s_format, s_shortest, s_baseline, s_baselineAir, s_baselineLoad, s_baselineTrim, s_baselineRpm, s_picture, s_causeMap, s_json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parsed)
    {
        CheckFiles(parsed);
        if (parsed.GetValue(s_ventilated) && parsed.GetValue(s_watched))
            throw new CommandException($"{s_ventilated.Name} and {s_watched.Name} cannot both be so: leave one of them out.");
        var request = Request(parsed);
        var options = new LogOptions { Format = Format(parsed.GetValue(s_format)), Engine = parsed.GetValue(s_logEngine), Gear = request.Engine.Gear };
        var file = parsed.GetRequiredValue(s_file);
        var log = NamedFile.Read(s_file.Name, file, text => TrialLog.Read(text, options));
        // The second log has a format of its own, so that what --format says of the first is not held against it.
        var guessed = options with { Format = null };
        if (parsed.GetValue(s_rpmLog) is { } second) log = TwoLogs.Join(log, NamedFile.Read(s_rpmLog.Name, second, text => TrialLog.Read(text, guessed)));
        var name = file == NamedFile.StandardInput ? "the standard input" : Path.GetFileName(file);
        var baseline = Baseline(parsed, request, guessed);
        var answer = request.Of(log, name, baseline?.Reading.Conditions);
        var compared = baseline is null ? null : Compared.Of(answer, baseline, parsed.GetValue(s_watched));
        var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
        if (parsed.GetValue(s_json)) output.WriteLine(TrialJson.Of(answer, compared));
        else output.Write(TrialText.Of(answer, name, compared));
        output.Flush();
        return Draw(s_picture, parsed, error, () => new PngRenderer().Render(CorrectionPicture.Of(answer.Reading, answer.Trial)))
            & Draw(s_causeMap, parsed, error, () => new PngRenderer().Render(Map(compared))) ? 0 : Outcome.Wrong;
    }

    /// <summary>What can be said of the names of files before any is opened.</summary>
    private static void CheckFiles(ParseResult parsed)
    {
        List<(string Option, string? Path)> read = [(s_file.Name, parsed.GetRequiredValue(s_file)), (s_rpmLog.Name, parsed.GetValue(s_rpmLog)), (s_baseline.Name, parsed.GetValue(s_baseline))];
        List<(string Option, string? Path)> written = [(s_picture.Name, parsed.GetValue(s_picture)), (s_causeMap.Name, parsed.GetValue(s_causeMap))];
        foreach (var (option, path) in read.Concat(written)) NamedFile.Named(option, path);
        if (read.Count(of => of.Path == NamedFile.StandardInput) > 1)
            throw new CommandException($"- is the standard input for {string.Join(" and ", read.Where(of => of.Path == NamedFile.StandardInput).Select(of => of.Option))}: it can be read once, so name a file for the other.");
        foreach (var (option, path) in written.Where(of => of.Path is not null))
            if (read.Concat(written).FirstOrDefault(of => of.Option != option && of.Path is not null && Path.GetFullPath(of.Path) == Path.GetFullPath(path!)) is { Path: not null } same)
                throw new CommandException($"{option} \"{path}\" would overwrite the file of {same.Option}: name another.");
    }

    private static TrialAnswer? Baseline(ParseResult parsed, TrialRequest request, LogOptions options)
    {
        if (parsed.GetValue(s_baseline) is not { } file)
        {
            var alone = new Option[] { s_baselineAir, s_baselineLoad, s_baselineTrim, s_baselineRpm }.FirstOrDefault(o => parsed.GetResult(o) is { Implicit: false });
            return alone is null ? null : throw new CommandException($"{alone.Name} tells of a baseline: name its file with {s_baseline.Name}.");
        }

        var then = request with
        {
            Air = parsed.GetValue(s_baselineAir) is { } air ? AirOption.Read(air, s_baselineAir.Name) : null,
            Load = parsed.GetValue(s_baselineLoad) is { } load ? Measure.Load(s_baselineLoad.Name, load) : null,
            TrimDegrees = parsed.GetValue(s_baselineTrim) is { } trim ? Measure.Trim(s_baselineTrim.Name, trim) : null,
            Rpm = Rates(s_baselineRpm, parsed),
            RpmOption = s_baselineRpm.Name,
            LimiterReached = false,
            Ventilated = false,
        };
        var log = NamedFile.Read(s_baseline.Name, file, text => TrialLog.Read(text, options));
        try
        {
            return then.Of(log, file == NamedFile.StandardInput ? "the standard input" : Path.GetFileName(file));
        }
        catch (CommandException e)
        {
            throw new CommandException($"{s_baseline.Name}: {e.Message}");
        }
    }

    /// <summary>Draws a picture that was asked for; false when it could not be, which is told and takes nothing from the answer.</summary>
    private static bool Draw(Option<string?> option, ParseResult parsed, TextWriter error, Func<byte[]> picture)
    {
        if (parsed.GetValue(option) is not { } path) return true;
        try
        {
            NamedFile.Write(option.Name, path, picture());
            return true;
        }
        catch (CommandException e)
        {
            error.WriteLine($"fleetwake: {e.Message}");
            return false;
        }
    }

    private static CauseMap Map(Compared? compared)
    {
        if (compared is null) throw new CommandException($"{s_causeMap.Name} shows a change: name the trial to hold this one against with {s_baseline.Name}.");
        return compared.Held is { } held
            ? CauseMap.Of(held) ?? throw new CommandException($"{s_causeMap.Name}: not drawn; no speed was read in the trial.")
            : throw new CommandException($"{s_causeMap.Name}: not drawn; {compared.Not!.Why}.");
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
            TrimDegrees = parsed.GetValue(s_trim) is { } trim ? Measure.Trim(s_trim.Name, trim) : null,
            PartThrottle = parsed.GetValue(s_partThrottle),
            LimiterReached = parsed.GetValue(s_limiter),
            Ventilated = parsed.GetValue(s_ventilated),
            Response = new BoatResponse(
                parsed.GetValue(s_gain) is { } gain ? Measure.WithDoubt("--gain", gain, 0, 1, 1, "0.38+-0.10") : prior.Gain,
                parsed.GetValue(s_kappa) is { } kappa ? Measure.WithDoubt("--kappa", kappa, 0, 3, 3, "1.2+-0.12") : prior.Kappa),
            Rpm = Rates(s_rpm, parsed),
            Rules = parsed.GetValue(s_shortest) is not { } shortest ? PlateauRules.Usual
                : shortest is >= 5 and <= 3600 ? PlateauRules.Usual with { Shortest = TimeSpan.FromSeconds(shortest) }
                : throw new CommandException($"--shortest {OptionParts.Show(shortest)} is not 5 to 3600 seconds."),
        };
    }

    private static EngineRate[] Rates(Option<string?> option, ParseResult parsed) =>
        parsed.GetValue(option) is { } rpm ? [.. rpm.Split(',', StringSplitOptions.TrimEntries).Select(one => Measure.Rate(option.Name, one))] : [];

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
}
