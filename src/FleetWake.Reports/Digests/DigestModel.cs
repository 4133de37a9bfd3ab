using Fluid;

namespace FleetWake.Reports.Digests;

/// <summary>What a template can see. Nothing else of the program is reachable from one.</summary>
internal sealed record DigestModel(WeeklyWearContent Content, IReadOnlyList<DrawnChart> Charts)
{
    public static void Register(MemberAccessStrategy members)
    {
        members.Register<DecisionItem, object>("boat", x => x.Boat);
        members.Register<DecisionItem, object>("dock", x => x.Dock);
        members.Register<DecisionItem, object>("blocks", x => x.Blocks);
        members.Register<DecisionItem, object>("state", x => x.State);
        members.Register<DecisionItem, object>("points", x => x.Points);
        members.Register<DecisionPoint, object>("sentence", x => x.Sentence);
        members.Register<DecisionPoint, object>("settles", x => x.Settles);
        members.Register<BoatRow, object>("name", x => x.Name);
        members.Register<BoatRow, object>("prop", x => x.Prop);
        members.Register<BoatRow, object>("hire", x => x.Hire);
        members.Register<BoatRow, object>("sign", x => x.Sign);
        members.Register<BoatRow, object>("state", x => x.State);
        members.Register<BoatRow, object>("outside", x => x.Outside);
        members.Register<BoatRow, object>("rpm", x => x.Rpm);
        members.Register<BoatRow, object>("read", x => x.Read);
        members.Register<BoatRow, object>("band", x => x.Band);
        members.Register<BoatRow, object>("margin", x => x.Margin);
        members.Register<BoatRow, object>("drift", x => x.Drift);
        members.Register<BoatRow, object>("exit", x => x.Exit);
        members.Register<BoatRow, object>("alarm", x => x.Alarm);
        members.Register<BoatRow, object>("wrong", x => x.Wrong);
        members.Register<BoatRow, object>("causes", x => x.Causes);
        members.Register<TrialRow, object>("name", x => x.Name);
        members.Register<TrialRow, object>("dock", x => x.Dock);
        members.Register<TrialRow, object>("decides", x => x.Decides);
        members.Register<TrialRow, object>("shows", x => x.Shows);
        members.Register<DueRow, object>("boat", x => x.Boat);
        members.Register<DueRow, object>("dock", x => x.Dock);
        members.Register<DueRow, object>("what", x => x.What);
        members.Register<DueRow, object>("when", x => x.When);
        members.Register<DueRow, object>("why", x => x.Why);
        members.Register<DrawnChart, object>("title", x => x.Title);
        members.Register<DrawnChart, object>("alt", x => x.Alt);
        members.Register<DrawnChart, object>("cid", x => x.Cid);
        members.Register<DrawnChart, object>("why_not", x => x.WhyNot);
    }

    public void Fill(TemplateContext context)
    {
        context.SetValue("operator", Content.OperatorName);
        context.SetValue("period", Content.Period);
        context.SetValue("day", $"{Content.Day:yyyy-MM-dd}");
        context.SetValue("subject", Content.Subject);
        context.SetValue("headline", Content.Headline);
        context.SetValue("decisions", Content.Decisions);
        context.SetValue("boats", Content.Boats);
        context.SetValue("boats_left_out", Content.BoatsLeftOut ?? "");
        context.SetValue("without_trials", Content.WithoutTrials);
        context.SetValue("overdue", Content.Overdue);
        context.SetValue("due_soon", Content.DueSoon);
        context.SetValue("charts", Charts);
        context.SetValue("charts_left_out", Content.ChartsLeftOut ?? "");
        context.SetValue("steps", Content.Steps);
        context.SetValue("trials", Content.Trials);
        context.SetValue("trials_left_out", Content.TrialsLeftOut ?? "");
        context.SetValue("method", Content.Method);
        context.SetValue("caution", Content.Caution);
    }
}
