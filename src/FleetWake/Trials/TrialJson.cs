using System.Text.Json;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>A trial's meaning as one JSON object. Standard deviations end in Sd; slip is a fraction; what is not known is null.</summary>
internal static class TrialJson
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    public static string Of(TrialAnswer answer, Compared? compared = null)
    {
        var (log, trial) = (answer.Log, answer.Trial);
        return JsonSerializer.Serialize(new
        {
            Rpm = Round(trial.Rpm.Value),
            RpmSd = Round(trial.Rpm.StandardDeviation),
            SpeedKnots = Round(trial.SpeedKnots?.Value),
            SpeedKnotsSd = Round(trial.SpeedKnots?.StandardDeviation),
            Slip = Round(trial.SlipFraction?.Value),
            SlipSd = Round(trial.SlipFraction?.StandardDeviation),
            CorrectionFactor = Round(trial.Correction?.Factor.Value),
            CorrectionFactorSd = Round(trial.Correction?.Factor.StandardDeviation),
            CorrectionFactorNotApplied = Round(trial.NotApplied?.Factor.Value),
            CorrectedRpm = Round(trial.CorrectedRpm.Value),
            CorrectedRpmSd = Round(trial.CorrectedRpm.StandardDeviation),
            CorrectedSpeedKnots = Round(trial.CorrectedSpeedKnots?.Value),
            CorrectedSpeedKnotsSd = Round(trial.CorrectedSpeedKnots?.StandardDeviation),
            UncheckedTachometerRpm = Round(trial.UncheckedTachometerRpm),
            Band = BandWords.Code(answer),
            Method = Snake(trial.Method.ToString()),
            Flags = trial.Doubts.Select(TrialDoubts.Code),
            AgainstBaseline = compared?.Held is { } held ? Change(held) : null,
            Runs = answer.Reading.Runs.Select(run => new
            {
                Rpm = Round(run.Engine.RevolutionsPerMinute),
                RpmScatter = Round(run.RpmScatter),
                SpeedKnots = Round(run.Speed?.Knots),
                SpeedScatterKnots = Round(run.SpeedScatterKnots),
                HeadingDegrees = Round(run.HeadingDegrees),
                HeldSeconds = Round(run.Held?.TotalSeconds),
                run.Began,
                run.LimiterReached,
                run.Ventilated,
            }),
            Log = new
            {
                Format = Snake(log.Format.ToString()),
                log.Lines,
                log.DroppedCount,
                log.Dropped,
                Notices = log.Notices.Select(notice => new { Code = Snake(notice.Kind.ToString()), notice.Detail }),
                answer.Recorded.Remarks,
            },
        }, s_options);
    }

    private static object Change(AgainstBaseline held) => new
    {
        RpmChange = Round(held.Changes[0].LnRpm),
        SpeedChange = Round(held.Changes[0].LnSpeed),
        Group = Snake(held.Finding.Group.ToString()),
        RpmUpProbability = Round(held.Finding.RpmUpProbability),
        RpmDownProbability = Round(held.Finding.RpmDownProbability),
        Named = held.Finding.Named is { } named ? Snake(named.Cause.ToString()) : null,
        Suspects = held.Finding.Suspects.Select(s => new { Cause = Snake(s.Cause.ToString()), Probability = Round(s.Probability) }),
        Tests = held.Finding.Tests.Select(t => Snake(t.ToString())),
    };

    private static string Snake(string name) => JsonNamingPolicy.SnakeCaseLower.ConvertName(name);

    /// <summary>Six decimals: more than any instrument has, and no tail of binary digits.</summary>
    private static double? Round(double? value) => value is { } v ? Math.Round(v, 6) : null;
}
