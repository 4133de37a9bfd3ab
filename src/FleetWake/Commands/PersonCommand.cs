using System.CommandLine;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Records;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Commands;

internal static class PersonCommand
{
    private static readonly Option<string> Person = new("--person") { Description = "Id of the person as it stands in records, e.g. mech-1.", Required = true };
    private static readonly Option<string> RoleOption = MakeRole();

    public static Command Make() => new("person", "Invites people, gives them roles and ends their access. Needs FLEETWAKE_DB.")
    {
        Invite(), Link(), List(), GiveRoleTo(), Leave(),
    };

    private static Command Invite()
    {
        var name = new Option<string>("--name") { Description = "Name for people; kept apart from the record, and erasable.", Required = true };
        var address = new Option<string?>("--address") { Description = "Mail address to sign in with by password; not needed for a passkey." };
        var command = new Command("invite", "Takes somebody in and prints a link that works once within 72 hours; only its hash is kept.") { OperatorCommand.Operator, Person, name, RoleOption, address };
        command.SetAction((parsed, ct) => WithAsync(parsed.GetRequiredValue(OperatorCommand.Operator), async (card, people, invitations) =>
        {
            Words.TryRead<Role>(parsed.GetRequiredValue(RoleOption), out var role);
            var answer = await people.InviteAsync(card, parsed.GetRequiredValue(Person), parsed.GetRequiredValue(name), parsed.GetValue(address), role, Hand.CommandLine, ct);
            Print(await invitations.MakeAsync(Made(answer), signsIn: false, ct));
        }, ct));
        return command;
    }

    private static Command Link()
    {
        var command = new Command("link", "Makes a new link for somebody who did not use the first, or lost the phone with the passkey; earlier links end.") { OperatorCommand.Operator, Person };
        command.SetAction((parsed, ct) => WithAsync(parsed.GetRequiredValue(OperatorCommand.Operator), async (card, people, invitations) =>
        {
            var id = parsed.GetRequiredValue(Person);
            var person = await people.FindAsync(card.Id, id, ct);
            if (person is not { LeftAt: null }) throw new CommandException($"Nobody of {card.Id} has the id \"{id}\": \"fleetwake person list --operator {card.Id}\" shows who is there.");
            Print(await invitations.MakeAsync(person, signsIn: false, ct));
        }, ct));
        return command;
    }

    private static Command List()
    {
        var command = new Command("list", "Lists who keeps an operator's record: id, name, role, address, and who left.") { OperatorCommand.Operator };
        command.SetAction((parsed, ct) => WithAsync(parsed.GetRequiredValue(OperatorCommand.Operator), async (card, people, _) =>
        {
            foreach (var person in await people.AllAsync(card.Id, ct))
                Console.WriteLine($"{person.Person}\t{person.Name}\t{Words.Of(person.Role)}\t{person.Address ?? "-"}\t{(person.LeftAt is { } at ? $"left {at:u}" : "here")}");
        }, ct));
        return command;
    }

    private static Command GiveRoleTo()
    {
        var command = new Command("role", "Gives somebody another role; it holds from the next request.") { OperatorCommand.Operator, Person, RoleOption };
        command.SetAction((parsed, ct) => WithAsync(parsed.GetRequiredValue(OperatorCommand.Operator), async (card, people, _) =>
        {
            Words.TryRead<Role>(parsed.GetRequiredValue(RoleOption), out var role);
            var person = Made(await people.GiveRoleAsync(card, parsed.GetRequiredValue(Person), role, Hand.CommandLine, ct));
            Console.WriteLine($"{person.Person} is {Words.Of(person.Role)} of {card.Id}");
        }, ct));
        return command;
    }

    private static Command Leave()
    {
        var forget = new Option<bool>("--forget") { Description = "Erase name and address as well; what the person recorded stands under the id." };
        var command = new Command("leave", "Ends somebody's access at once: sessions, links, passkeys and password.") { OperatorCommand.Operator, Person, forget };
        command.SetAction((parsed, ct) => WithAsync(parsed.GetRequiredValue(OperatorCommand.Operator), async (card, people, _) =>
        {
            var person = Made(await people.LeaveAsync(card, parsed.GetRequiredValue(Person), parsed.GetValue(forget), Hand.CommandLine, ct));
            Console.WriteLine($"{person.Person} has left {card.Id}{(parsed.GetValue(forget) ? ", name and address are forgotten" : "")}");
        }, ct));
        return command;
    }

    private static void Print(string secret)
    {
        var path = FleetInvitations.PathOf(secret);

        // The link stands alone on standard output, for scripts that pass it on.
        Console.WriteLine(FleetSettings.FromEnvironment().PublicUrl is { } url ? url.AbsoluteUri.TrimEnd('/') + path : path);
        Console.Error.WriteLine(
            $"It works once, within {FleetInvitations.Lasts.TotalHours:0} hours: give it to that person alone"
            + (FleetSettings.FromEnvironment().PublicUrl is null ? ", after the address under which \"fleetwake serve\" is reached (with FLEETWAKE_PUBLIC_URL set, it is printed whole)." : "."));
    }

    private static PersonCard Made(PeopleAnswer answer) =>
        answer.Person ?? throw new CommandException(string.Join(" ", answer.Refusals.Select(r => $"{Option(r.Field)}{r.Message}.")));

    private static string Option(string field) => field is "/person" or "/name" or "/address" or "/role" ? $"--{field[1..]}: " : "";

    private static Option<string> MakeRole()
    {
        var role = new Option<string>("--role") { Description = "What the person does: mechanic, operator, manager, analyst or administrator.", Required = true };
        role.AcceptOnlyFromAmong([.. Words.All(typeof(Role))]);
        return role;
    }

    private static async Task<int> WithAsync(string @operator, Func<OperatorCard, FleetPeople, FleetInvitations, Task> run, CancellationToken ct)
    {
        await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
        using var store = FleetStore.Open(source);
        var time = TimeProvider.System;
        var card = await OperatorCommand.NeedAsync(new FleetOperators(store, time), @operator, ct);
        await run(card, new FleetPeople(store, source, new Recorder(store), time), new FleetInvitations(store, source, time));
        return 0;
    }
}
