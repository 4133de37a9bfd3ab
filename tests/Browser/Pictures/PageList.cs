using FleetWake.Logbook.People;

namespace FleetWake.Browser.Tests.Pictures;

/// <summary>A page to be looked at.</summary>
/// <param name="Name">Name of its pictures.</param>
/// <param name="Path">Its address.</param>
/// <param name="Role">Who looks.</param>
/// <param name="Whole">The whole page rather than what a window shows of it.</param>
/// <param name="Status">Its HTTP status.</param>
public sealed record LookedAtPage(string Name, string Path, Role Role = Role.Manager, bool Whole = false, int Status = 200);

/// <summary>Every page that is looked at: a new page is one line here.</summary>
internal static class PageList
{
    public static IReadOnlyList<LookedAtPage> All { get; } =
    [
        new("fleet", "/office"),
        new("boat", "/office/boats/gannet", Role.Mechanic),
        new("drift", "/office/boats/plover#at-single", Role.Mechanic),
        new("due", "/office/due", Role.Operator),
        new("questions", "/office/questions", Role.Operator),
        new("me", "/office/me"),
        new("tags", "/office/tags", Role.Operator),
        new("devices", "/office/devices", Role.Operator),
        new("quarantine", "/office/quarantine", Role.Operator),
        new("photos", "/office/photos", Role.Administrator),
        new("props", "/office/props", Role.Operator),
        new("spares", "/office/spares?days=28", Role.Operator),
        new("shop", "/office/shop", Role.Operator),
        new("mail", "/office/mail", Whole: true),
        new("mail-hook", "/office/mail/hook", Role.Administrator),
        new("rules", "/office/rules", Whole: true),
        new("claims", "/office/claims", Role.Operator),
        new("templates", "/office/templates", Whole: true),
        new("template", "/office/templates/due-list.html.liquid"),
        new("packs", "/office/analyst", Role.Analyst),
        new("pack", "/office/analyst/2026-01", Role.Analyst),
        new("leave", "/unsubscribe/of-no-matter", Status: 404),
        new("import", "/office/import", Role.Operator),
    ];
}
