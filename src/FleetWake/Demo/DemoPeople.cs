using FleetWake.Hosting;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Demo;

/// <summary>Invented people who may look at the invented fleet. Nobody chose a password: each comes in by a link that works once.</summary>
internal static class DemoPeople
{
    private static readonly (string Person, string Name, Role Role)[] All =
    [
        ("office-01", "Una Marsh", Role.Administrator),
        ("mech-01", "Rafe Mooring", Role.Manager),
        ("mech-02", "Ines Gull", Role.Mechanic),
    ];

    /// <summary>Takes them in and says how to sign in.</summary>
    public static async Task<string> WhereToSignInAsync(WebApplication app, OperatorCard card, CancellationToken ct)
    {
        var people = app.Services.GetRequiredService<FleetPeople>();
        var invitations = app.Services.GetRequiredService<FleetInvitations>();
        var office = Starting.Office(app.Services.GetRequiredService<FleetSettings>(), app.Urls.First());
        var lines = new List<string> { $"  office:   {office}   (sign in once by a link; each is used up by it)" };
        foreach (var (id, name, role) in All)
        {
            var answer = await people.InviteAsync(card, id, name, null, role, Hand.CommandLine, ct);
            var path = FleetInvitations.PathOf(await invitations.MakeAsync(answer.Person!, signsIn: true, ct));
            lines.Add($"    {name}, {Words.Prose(role)}: {office[..^"/office".Length]}{path}");
        }

        return string.Join(Environment.NewLine, lines);
    }
}
