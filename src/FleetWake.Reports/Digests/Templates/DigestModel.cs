using Fluid;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>One digest as its templates see it.</summary>
internal sealed record DigestModel(DigestDraft Draft, IReadOnlyList<DrawnChart> Charts)
{
    public void Fill(TemplateContext context)
    {
        foreach (var (name, property) in TemplateMembers.Of(Draft.Content.GetType()))
            context.SetValue(name, TemplateMembers.Shown(property, Draft.Content));
        context.SetValue("subject", Draft.Subject);
        context.SetValue("charts", Charts);
    }
}
