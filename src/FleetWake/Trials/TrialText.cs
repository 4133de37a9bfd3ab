using System.Globalization;
using System.Text;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Logs;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>A trial's meaning as text. What follows +/- is one standard deviation.</summary>
internal static class TrialText
{
    private const int MostLinesShown = 10;

    public static string Of(TrialAnswer answer, string file, Compared? compared = null)
    {
        var text = new StringBuilder();
        void Line(string line) => text.Append(line.TrimEnd()).Append('\n');
        var (log, trial) = (answer.Log, answer.Trial);

        Line($"Trial of {answer.Reading.Runs.Count} {(answer.Reading.Runs.Count == 1 ? "run" : "runs")} from {file} ({Name(log.Format)}, {log.Lines} {Unit(log.Format)}{(log.Lines == 1 ? "" : "s")} read, {log.DroppedCount} dropped)");
        Line("");
        Line("  run  heading      RPM          speed kn       held");
        foreach (var (index, run) in answer.Reading.Runs.Index())
        {
            Line(string.Create(CultureInfo.InvariantCulture,
                $"  {index + 1,3}  {run.HeadingDegrees,5:0}    {Doubted(run.Engine.RevolutionsPerMinute, run.RpmScatter, "0"),-14} {(run.Speed is { } v ? Doubted(v.Knots, run.SpeedScatterKnots, "0.0#") : "-"),-14} {(run.Held is { } held ? $"{held.TotalSeconds:0} s" : "")}"));
        }

        Line("");
        var corrected = trial.Correction is not null;
        Line($"  {"",-8}{"as read",-22}{(corrected ? "at reference air" : "not corrected for the air")}");
        Line($"  {"RPM",-8}{Value(trial.Rpm, "0"),-22}{Value(trial.CorrectedRpm, "0")}");
        if (trial.SpeedKnots is { } speed) Line($"  {"speed",-8}{Value(speed, "0.0#") + " kn",-22}{(trial.CorrectedSpeedKnots is { } c ? Value(c, "0.0#") + " kn" : "")}");
        if (trial.SlipFraction is { } slip) Line($"  {"slip",-8}{Value(new Uncertain(100 * slip.Value, 100 * slip.StandardDeviation), "0.0")} %");
        if ((trial.Correction ?? trial.NotApplied) is { } power)
            Line($"  power correction CF {Value(power.Factor, "0.0000")}{(corrected ? "" : ", not applied")}");
        if (BandWords.Sentence(answer) is { } band)
        {
            Line($"  {band}");
            if (trial.UncheckedTachometerRpm > 0)
                Line(string.Create(CultureInfo.InvariantCulture, $"  ({(answer.Reading.Engine.TachometerError is null ? "the tachometer was never held against an instrument" : "what the check of the tachometer left open")}: +/- {trial.UncheckedTachometerRpm:0} RPM more, against the band only)"));
        }

        if (compared is not null)
        {
            Line($"\n{compared.Sentence()}");
            foreach (var note in compared.Notes) Line(note);
        }

        List(text, "What widens the doubt:", trial.Doubts.Select(doubt => $"{TrialDoubts.Code(doubt)}: {DoubtWords.Of(doubt)}"));
        List(text, "Of the file:", log.Notices.Select(notice => notice.Detail).Concat(answer.Recorded.Remarks)
            .Concat(answer.Recorded.LeftOut.Count == 0 ? [] : [LeftOut(answer.Recorded.LeftOut)]));
        List(text, $"Dropped lines{(log.DroppedCount > MostLinesShown ? $" (the first {MostLinesShown} of {log.DroppedCount})" : "")}:",
            log.Dropped.Take(MostLinesShown).Select(line => $"line {line.Line}: {line.Reason}"));
        Line("\nA decision aid: the owner's manual, local rules and a licensed technician win.");
        return text.ToString();
    }

    private static void List(StringBuilder text, string head, IEnumerable<string> items)
    {
        var all = items.ToArray();
        if (all.Length == 0) return;
        text.Append('\n').Append(head).Append('\n');
        foreach (var item in all) text.Append("  - ").Append(item).Append('\n');
    }

    private static string LeftOut(IReadOnlyList<Plateau> plateaus)
    {
        var shown = plateaus.Take(6).Select(p => string.Create(CultureInfo.InvariantCulture,
            $"{(p.Engine is { } n ? $"{n.RevolutionsPerMinute:0} RPM" : "")}{(p.Engine is not null && p.Speed is not null ? " " : "")}{(p.Speed is { } v ? $"{v.Knots:0.0} kn" : "")} for {p.Held.TotalSeconds:0} s"));
        return $"{plateaus.Count} steady {(plateaus.Count == 1 ? "stretch was" : "stretches were")} not taken for runs: {string.Join(", ", shown)}{(plateaus.Count > 6 ? ", ..." : "")}";
    }

    private static string Value(Uncertain value, string format) => Doubted(value.Value, value.StandardDeviation, format);

    private static string Doubted(double value, double? sd, string format) =>
        value.ToString(format, CultureInfo.InvariantCulture) + (sd is { } s ? $" +/- {s.ToString(format, CultureInfo.InvariantCulture)}" : "");

    private static string Name(LogFormat format) => format switch
    {
        LogFormat.Nmea0183 => "NMEA 0183",
        LogFormat.SignalK => "Signal K",
        LogFormat.Gpx => "GPX",
        LogFormat.Csv => "CSV",
        _ => "JSON",
    };

    private static string Unit(LogFormat format) => format switch
    {
        LogFormat.Gpx => "point",
        LogFormat.SignalK or LogFormat.TypedJson => "object",
        _ => "line",
    };
}
