using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests;

/// <summary>Holds a page against WCAG 2.2 A and AA by axe-core (Deque Systems, MPL-2.0), and against what axe does not see.</summary>
internal static class Accessible
{
    // All else that axe finds in order is a list as long as the page, which nobody reads.
    private static readonly HashSet<ResultType> Violations = [ResultType.Violations];

    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
        ResultTypes = Violations,
    };

    /// <summary>Of all rules only contrast can differ between light and dark.</summary>
    private static readonly AxeRunOptions Contrast = new() { RunOnly = new RunOnlyOptions { Type = "rule", Values = ["color-contrast"] }, ResultTypes = Violations };

    /// <summary>No violation in light and in dark, and nothing that scrolls sideways at 320 px.</summary>
    public static async Task HoldsAsync(IPage page)
    {
        foreach (var scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
            var found = await page.RunAxe(scheme == ColorScheme.Light ? Rules : Contrast);
            Assert.True(found.Violations.Length == 0, $"{page.Url} in {scheme}:\n" + string.Join("\n", found.Violations.Select(Sentence)));
        }

        var size = page.ViewportSize;
        await page.SetViewportSizeAsync(320, 640);
        var over = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"{page.Url} scrolls sideways by {over} px at a width of 320 px");
        if (size is not null) await page.SetViewportSizeAsync(size.Width, size.Height);
    }

    private static string Sentence(AxeResultItem item) =>
        $"{item.Id}: {item.Help}\n  " + string.Join("\n  ", item.Nodes.Take(3).Select(n => n.Html));
}
