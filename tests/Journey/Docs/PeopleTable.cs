using System.Text;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;

namespace FleetWake.Journey.Tests.Docs;

/// <summary>The table of who may do what, as docs/people.md shows it.</summary>
internal static class PeopleTable
{
    public static string Write()
    {
        var roles = Enum.GetValues<Role>();
        var table = new StringBuilder($"| matter | {string.Join(" | ", roles.Select(r => Words.Prose(r)))} |\n|---|{string.Concat(roles.Select(_ => "---|"))}\n");
        foreach (var matter in Enum.GetValues<Matter>())
            table.Append(System.Globalization.CultureInfo.InvariantCulture, $"| {Words.Prose(matter)} | {string.Join(" | ", roles.Select(r => May(r, matter)))} |\n");
        return table.ToString();
    }

    private static string May(Role role, Matter matter)
    {
        var verbs = Enum.GetValues<Verb>().Where(v => Permissions.Allow(role, v, matter)).Select(v => Words.Of(v) + "s").ToList();
        return verbs.Count == 0 ? "-" : string.Join(", ", verbs);
    }
}
