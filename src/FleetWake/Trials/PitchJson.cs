using FleetWake.Propulsion.Advice;
using static FleetWake.Trials.AnswerJson;

namespace FleetWake.Trials;

/// <summary>Advice on pitch as one JSON object. Standard deviations end in Sd; chances are from 0 to 1.</summary>
internal static class PitchJson
{
    private const int Decimals = 4;

    public static string Of(PitchRequest request)
    {
        var (question, table, plan) = (request.Question, PitchAdvice.Of(request.Question), PropPlan.Of(request.Question));
        var rpm = question.CorrectedRpm;
        return Write(new
        {
            FittedPitchInches = Round(question.FittedPitch.Inches),
            CorrectedRpm = Round(rpm.Value),
            CorrectedRpmSd = Round(rpm.StandardDeviation),
            BandLowRpm = Round(question.BandLow.RevolutionsPerMinute),
            BandHighRpm = Round(question.BandHigh.RevolutionsPerMinute),
            PitchElasticity = Round(question.PitchElasticity.Value),
            PitchElasticitySd = Round(question.PitchElasticity.StandardDeviation),
            DensestAirFactor = Round(Math.Exp(question.LnDensestAir)),
            DenseAirRpm = Round(table.DenseAirRpm),
            request.TachometerChecked,
            FirstRuleOut = table.FirstRuleOut.Select(cause => Snake(cause)),
            AdvisedPitchInches = Round(table.Advised?.Pitch.Inches),
            Rows = table.Rows.Select(row => new
            {
                PitchInches = Round(row.Pitch.Inches),
                row.Fitted,
                Verdict = Snake(row.Verdict),
                row.LugsAt,
                Uses = row.Landings.Select(Landing),
            }),
            Plan = new
            {
                Props = plan.Props.Select(prop => new { PitchInches = Round(prop.Pitch.Inches), Uses = prop.Uses.Select(use => use.Use), prop.ComesOffBefore }),
                plan.NotKept,
            },
            LowConfidence = new
            {
                RpmOfAnInchOfDiameter = Range(RoughAdvice.RpmOfAnInchOfDiameter(question)),
                RpmOfAFourthBlade = RoughAdvice.RpmOfAFourthBlade(rpm.Value, request.Prop.Blades) is { } blade ? Range(blade) : null,
                RpmOfStainless = Range(RoughAdvice.RpmOfStainless(rpm.Value)),
            },
        });
    }

    private static object Landing(PitchLanding at) => new
    {
        at.Use,
        Rpm = Round(at.Rpm.Value),
        RpmSd = Round(at.Rpm.StandardDeviation),
        HighestRpm = Round(at.HighestRpm),
        InBand = Round(at.InBand),
        AboveTop = Round(at.AboveTop),
        BelowBottom = Round(at.BelowBottom),
    };

    private static double?[] Range((double Lowest, double Highest) of) => [Round(of.Lowest), Round(of.Highest)];

    private static double? Round(double? value) => AnswerJson.Round(value, Decimals);
}
