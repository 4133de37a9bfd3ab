using System.CommandLine;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Mail;
using FleetWake.Reports.Mail;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Commands;

internal static partial class OperatorCommand
{
    public static readonly Option<string> Operator = new("--operator") { Description = "Id of the operator.", Required = true };

    public static Command Make() => new("operator", "Opens operators and keeps the recipients of their digests. Needs FLEETWAKE_DB.")
    {
        Open(), List(), ReplyTo(), Subscribe(), Unsubscribe(),
    };

    private static Command Open()
    {
        var id = new Argument<string>("id") { Description = "Id: lower-case letters, digits and hyphens." };
        var name = new Option<string>("--name") { Description = "Name for people.", Required = true };
        var zone = new Option<string>("--zone") { Description = "IANA zone of the office, e.g. Pacific/Auckland; digests go out by its clock.", Required = true };
        var command = new Command("open", "Opens an operator; opening it again changes nothing.") { id, name, zone };
        command.SetAction((parsed, ct) => WithAsync(async operators =>
        {
            var given = parsed.GetRequiredValue(id);
            if (!IdPattern().IsMatch(given)) throw new CommandException($"\"{given}\" is no operator id: use 2 to 40 lower-case letters, digits and hyphens, beginning with a letter.");
            if (parsed.GetRequiredValue(name) is var called && (called.Any(char.IsControl) || called.Trim().Length == 0))
                throw new CommandException("The name cannot stand in a mail: give one line without control characters.");
            var where = parsed.GetRequiredValue(zone);
            if (!where.Contains('/', StringComparison.Ordinal) || !TimeZoneInfo.TryFindSystemTimeZoneById(where, out _))
                throw new CommandException($"\"{where}\" is not a zone known here: give an IANA name such as Pacific/Auckland.");
            var card = await operators.OpenAsync(given, parsed.GetRequiredValue(name), where, ct);
            Console.WriteLine(card.Name == parsed.GetRequiredValue(name) && card.Zone == where
                ? $"operator {given} is open"
                : $"operator {given} was open already, as \"{card.Name}\" in {card.Zone}: nothing was changed");
        }));
        return command;
    }

    private static Command List()
    {
        var command = new Command("list", "Lists operators.");
        command.SetAction((_, ct) => WithAsync(async operators =>
        {
            foreach (var card in await operators.AllAsync(ct)) Console.WriteLine($"{card.Id}\t{card.Name}\t{card.Zone}{(card.ReplyTo is { } to ? $"\tanswers to {to}" : "")}");
        }));
        return command;
    }

    private static Command ReplyTo()
    {
        var address = new Argument<string?>("address") { Description = "Mail address.", Arity = ArgumentArity.ZeroOrOne };
        var off = new Option<bool>("--off") { Description = "No address of its own any more." };
        var command = new Command("reply-to", "Sets the address that readers of an operator's mail answer to; FLEETWAKE_MAIL_REPLY_TO, else the sender, where it has none of its own.") { Operator, address, off };
        command.SetAction((parsed, ct) => WithAsync(async operators =>
        {
            var card = await NeedAsync(operators, parsed.GetRequiredValue(Operator), ct);
            var (typed, none) = (parsed.GetValue(address), parsed.GetValue(off));
            if (typed is null != none) throw new CommandException("Give the address, or --off for none.");
            var to = typed is null ? null : ConfirmationMail.Plain(typed) ?? throw new CommandException($"\"{typed}\" is no plain mail address: give it as in office@example.org.");
            await operators.AnswerToAsync(card.Id, to, ct);
            Console.WriteLine(to is null ? $"readers of {card.Id} answer to no address of its own any more" : $"readers of {card.Id} answer to {to}, from the next message on");
        }));
        return command;
    }

    private static Command Subscribe()
    {
        var address = new Argument<string>("address") { Description = "Mail address." };
        var digest = new Option<string>("--digest") { Description = $"Which digest: {string.Join(", ", DigestNames.All)}.", DefaultValueFactory = _ => DigestNames.WeeklyWear };
        var dock = new Option<string?>("--dock") { Description = "Only of this dock, by its id; of every dock when not given. One that is not on record is refused, unless no boat is yet." };
        var confirm = new Option<bool>("--confirm") { Description = "Ask the address by mail first; it receives nothing else until somebody there says yes. Needs FLEETWAKE_PUBLIC_URL." };
        var command = new Command("subscribe", "Sends a digest to an address from now on, the weekly wear digest when not told otherwise. Whoever has the database needs nobody's word: the address is not asked.")
        {
            Operator, address, digest, dock, confirm,
        };
        command.SetAction((parsed, ct) => WithAsync(async (operators, reading) =>
        {
            var to = parsed.GetRequiredValue(address);
            if (!MimeKit.MailboxAddress.TryParse(to, out var mailbox) || !mailbox.Address.Contains('@', StringComparison.Ordinal))
                throw new CommandException($"\"{to}\" is no mail address.");
            var which = parsed.GetRequiredValue(digest);
            if (!DigestNames.All.Contains(which)) throw new CommandException($"There is no digest \"{which}\": give one of {string.Join(", ", DigestNames.All)}.");
            if (which == DigestNames.AnalystPack && parsed.GetValue(dock) is not null) throw new CommandException("The analyst's pack is always of the whole fleet: leave --dock out.");
            var card = await NeedAsync(operators, parsed.GetRequiredValue(Operator), ct);
            var (of, note) = await DockAsync(reading, card, parsed.GetValue(dock), ct);
            if (parsed.GetValue(confirm))
            {
                var settings = FleetSettings.FromEnvironment();
                if (settings.PublicUrl is null) throw new CommandException("No address can be asked: its link needs FLEETWAKE_PUBLIC_URL.");
                Console.WriteLine(await new ConfirmationMail(operators, settings.Sender).AskAsync(card, mailbox.Address, which, of, null, ct) switch
                {
                    Asked.Now => $"{mailbox.Address} is asked; nothing else is sent to it until somebody there says yes",
                    Asked.AskedLately => throw new CommandException($"{mailbox.Address} was asked within the last day."),
                    Asked.ReceivesIt => throw new CommandException($"{mailbox.Address} receives that already."),
                    Asked.TakesNoMail => throw new CommandException($"A server said that {mailbox.Address} takes no mail: \"fleetwake mail mend\" lets it be tried again."),
                    _ => throw new CommandException($"\"{to}\" is no plain mail address."),
                } + note);
                return;
            }

            await operators.SubscribeAsync(card, mailbox.Address, which, ct, of);
            Console.WriteLine($"{mailbox.Address} receives the {which.Replace('-', ' ')} {(which == DigestNames.WeeklyWear ? "digest" : "mail")}{(of is null ? "" : $" of {of}")}{note}");
        }));
        return command;
    }

    /// <summary>The dock that is meant, as it is on record, and what is to be said of it.</summary>
    private static async Task<(string? Dock, string Note)> DockAsync(FleetReading reading, OperatorCard card, string? typed, CancellationToken ct)
    {
        if (typed is null) return (null, "");
        var docks = FleetDocks.Of(await reading.OfficeAsync(card.Id, ct), (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding));
        if (docks.Meant(typed) is { } meant) return (meant.Dock, meant.Boats > 0 ? "" : "; no boat lies there yet, and nothing comes until one does");
        if (docks.Any(d => d.Boats > 0)) throw new CommandException($"There is no dock \"{typed}\" at {card.Id}: give one of {docks.Listed()}, or leave --dock out for every dock.");
        return (typed, $"; no boat of {card.Id} is on record yet, so nobody can say whether \"{typed}\" is a dock of it: \"fleetwake check\" says so later");
    }

    private static Command Unsubscribe()
    {
        var address = new Argument<string>("address") { Description = "Mail address." };
        var forget = new Option<bool>("--forget") { Description = "Erase the address as well." };
        var command = new Command("unsubscribe", "Stops sending digests to an address, also those that wait to be sent.") { Operator, address, forget };
        command.SetAction((parsed, ct) => WithAsync(async operators =>
        {
            var to = parsed.GetRequiredValue(address);
            var card = await NeedAsync(operators, parsed.GetRequiredValue(Operator), ct);
            if (!await operators.UnsubscribeAddressAsync(card, to, parsed.GetValue(forget), ct)) throw new CommandException($"\"{to}\" receives nothing of {card.Id}.");
            Console.WriteLine($"{to} receives nothing more{(parsed.GetValue(forget) ? ", and is forgotten" : "")}");
        }));
        return command;
    }

    /// <summary>An operator that is open, or a clear complaint.</summary>
    public static async Task<OperatorCard> NeedAsync(FleetOperators operators, string id, CancellationToken ct) =>
        await operators.FindAsync(id, ct) ?? throw new CommandException(
            $"There is no operator \"{id}\": \"fleetwake operator list\" shows them, \"fleetwake operator open {id} --name … --zone …\" opens it.");

    /// <summary>Runs something on the operators of the database that is set.</summary>
    public static Task<int> WithAsync(Func<FleetOperators, Task> run) => WithAsync((operators, _) => run(operators));

    private static async Task<int> WithAsync(Func<FleetOperators, FleetReading, Task> run)
    {
        await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
        using var store = FleetStore.Open(source);
        await run(new FleetOperators(store, TimeProvider.System), new FleetReading(store, source));
        return 0;
    }

    [GeneratedRegex(@"\A[a-z][a-z0-9-]{1,39}\z")]
    private static partial Regex IdPattern();
}
