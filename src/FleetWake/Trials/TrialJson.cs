using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;
using static FleetWake.Trials.AnswerJson;

namespace FleetWake.Trials;

/// <summary>A trial's meaning as one JSON object. Standard deviations end in Sd; slip is a fraction; what is not known is null.</summary>
internal static class TrialJson
{
    public static string Of(TrialAnswer answer, Compared? compared = null)
    {
        var (log, trial) = (answer.Log, answer.Trial);
        return Write(new
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
            Method = Snake(trial.Method),
            Flags = trial.Doubts.Select(TrialDoubts.Code),
            AgainstBaseline = compared is null ? null : compared.Held is { } held ? Change(held) : new { NotCompared = compared.Not!.Code, compared.Not.Why },
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
                Format = Snake(log.Format),
                log.Lines,
                log.DroppedCount,
                log.Dropped,
                Notices = log.Notices.Select(notice => new { Code = Snake(notice.Kind), notice.Detail }),
                answer.Recorded.Remarks,
            },
        });
    }

    private static object Change(AgainstBaseline held) => new
    {
        RpmChange = Round(held.Changes[0].RpmFraction),
        RpmChangeSd = Round(Compared.Sd(held, speed: false)),
        SpeedChange = Round(held.Changes[0].SpeedFraction),
        SpeedChangeSd = held.Changes[0].LnSpeed is null ? null : Round(Compared.Sd(held, speed: true)),
        Group = CauseWords.ProbabilityOfGroup(held.Finding) >= CauseWords.SureEnough ? Snake(held.Finding.Group) : null,
        RpmUpProbability = Round(held.Finding.RpmUpProbability),
        RpmDownProbability = Round(held.Finding.RpmDownProbability),
        Named = held.Finding.Named is { } named ? Snake(named.Cause) : null,
        Suspects = held.Finding.Suspects.Select(s => new { Cause = Snake(s.Cause), Probability = Round(s.Probability) }),
        Tests = held.Finding.Tests.Select(t => Snake(t)),
    };
}
