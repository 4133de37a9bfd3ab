using System.Globalization;
using System.Text;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Advice;

namespace FleetWake.Trials;

/// <summary>Advice on pitch as a table and a few sentences.</summary>
internal static class PitchText
{
    public static string Of(PitchRequest request)
    {
        var (question, table, plan) = (request.Question, PitchAdvice.Of(request.Question), PropPlan.Of(request.Question));
        var text = new StringBuilder();
        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        Line($"{Size(request)} turns {question.CorrectedRpm.Value:0} RPM (+/- {2 * question.CorrectedRpm.StandardDeviation:0}, 95 %) at the load of the trial; band {question.BandLow.RevolutionsPerMinute:0}-{question.BandHigh.RevolutionsPerMinute:0}.");
        if (!request.TachometerChecked)
            Line($"The tachometer's own error is in that doubt: say tacho=... in {EngineOption.Name} when it was checked.");
        if (table.FirstRuleOut.Count > 0)
            Line($"First rule out {CauseWords.List(table.FirstRuleOut)}: another pitch is a remedy only after those.");
        Line($"");
        var width = Math.Max(5, question.Loads.Max(load => load.Name.Length));
        Line($"  pitch  {"use".PadRight(width)}    RPM   95 % from-to   cold, to   in band  above  below");
        foreach (var row in table.Rows)
            for (var i = 0; i < row.Landings.Count; i++)
                Line($"{(i == 0 ? Pitch(row) : "       ")}  {Landing(row.Landings[i], width)}{(i == 0 ? "  " + Words(row) : "")}");
        Line($"");
        if (table.DenseAirRpm > 0)
            Line($"Cold air adds up to {table.DenseAirRpm:0} RPM (power correction {Math.Exp(question.LnDensestAir):0.00}): counted against the top, as \"cold, to\" shows.");
        Line($"{Advice(table)}");
        if (question.Loads.Count > 1)
            Line($"{Plan(plan)}");
        Line($"{Rough(question, request.Prop.Blades)}");
        Line($"RPM is corrected RPM. The owner's manual and a licensed technician win; a trial with the new prop decides.");
        return text.ToString();
    }

    private static string Size(PitchRequest request) =>
        $"{OptionParts.Show(request.Prop.Diameter?.Inches ?? 0)}x{OptionParts.Show(request.Prop.Pitch.Inches)}{(request.Prop.Blades is { } blades ? $"x{blades}" : "")}";

    private static string Pitch(PitchRow row) => $"{(row.Fitted ? "* " : "  ")}{OptionParts.Show(row.Pitch.Inches),5}";

    private static string Landing(PitchLanding at, int width) => string.Create(
        CultureInfo.InvariantCulture,
        $"{at.Use.PadRight(width)}  {at.Rpm.Value,5:0}   {at.At(-2),5:0}-{at.At(2),-5:0}      {at.HighestRpm,5:0}     {Share(at.InBand)}  {Share(at.AboveTop)}  {Share(at.BelowBottom)}");

    private static string Share(double chance) => (chance is > 0 and < 0.005 ? "<1 %" : chance is > 0.995 and < 1 ? ">99 %" : $"{Math.Round(100 * chance):0} %").PadLeft(5);

    private static string Words(PitchRow row) => row.Verdict switch
    {
        PitchVerdict.Advised => row.Fitted ? "advised: stays on" : "advised",
        PitchVerdict.MayOverRev => "may over-rev",
        PitchVerdict.Lugs => "lugs",
        _ => "possible",
    } + (row.Fitted && row.Verdict != PitchVerdict.Advised ? ", fitted" : "");

    private static string Advice(PitchTable table) => table.Advised switch
    {
        null => "None of these pitches is advised: each may exceed the band's top in some use, or lugs at the usual load.",
        { Fitted: true } row => $"Advice: the fitted pitch stays on{LugsAt(row)}.",
        var row => $"Advice: {OptionParts.Show(row.Pitch.Inches)} in{LugsAt(row)}.",
    };

    private static string LugsAt(PitchRow row) => row.LugsAt.Any() ? $"; it lugs at {string.Join(", ", row.LugsAt)}" : "";

    private static string Plan(PropPlan plan)
    {
        var props = plan.Props.Select(prop => $"{OptionParts.Show(prop.Pitch.Inches)} in for {string.Join(", ", prop.Uses.Select(use => use.Use))}");
        var kept = plan.Props.Count == 0 ? "Prop plan: none of these pitches keeps any use in the band." : $"Prop plan, the fewest that keep every use in the band: {string.Join("; ", props)}.{string.Concat(plan.Props.Where(prop => prop.ComesOffBefore.Count > 0).Select(ComesOff))}";
        return plan.NotKept.Count == 0 || plan.Props.Count == 0 ? kept : $"{kept} No pitch here keeps {string.Join(", ", plan.NotKept)} in it.";
    }

    private static string ComesOff(Propulsion.Advice.PlannedProp prop) =>
        $" Take the {OptionParts.Show(prop.Pitch.Inches)} in off before {string.Join(", ", prop.ComesOffBefore)}: over the top there.";

    private static string Rough(PitchQuestion question, int? blades)
    {
        var (rpm, inch) = (question.CorrectedRpm.Value, RoughAdvice.RpmOfAnInchOfDiameter(question));
        var fourth = RoughAdvice.RpmOfAFourthBlade(rpm, blades) is { } blade ? $" a fourth blade of the same area {Range(blade)};" : "";
        return $"Low confidence, ranges only: an inch more diameter {Range(inch)} RPM;{fourth} stainless for aluminium {Range(RoughAdvice.RpmOfStainless(rpm))}.";
    }

    /// <summary>Tens of RPM: more figures would claim what nobody knows.</summary>
    private static string Range((double Lowest, double Highest) of) => string.Create(
        CultureInfo.InvariantCulture, $"{10 * Math.Round(of.Lowest / 10):+0;-0;0} to {10 * Math.Round(of.Highest / 10):+0;-0;0}");
}
