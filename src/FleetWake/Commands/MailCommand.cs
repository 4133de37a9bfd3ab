using System.CommandLine;
using FleetWake.Reports.Mail;
using FleetWake.Settings;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Commands;

internal static class MailCommand
{
    private const int MostListed = 200;

    public static Command Make() => new("mail", "Lists what went out, sends a message again, lets an address be tried again, makes a key that signs mail, hands alerts to an address, keeps all mail in after a restore.")
    {
        List(), Again(), Mend(), Key(), Hook(), Hold(), Release(),
    };

    private static Command List()
    {
        var state = new Option<string?>("--state") { Description = $"Only messages in this state: {string.Join(", ", MailState.All)}." };
        var unclear = new Option<bool>("--unclear") { Description = "Only messages of which an attempt ended without a clear answer: more than one copy may have arrived." };
        var command = new Command("list", $"Lists the last {MostListed} messages of an operator, newest first: key, state, attempts, recipient, when queued, what was said last. Needs FLEETWAKE_DB.") { OperatorCommand.Operator, state, unclear };
        command.SetAction((parsed, ct) => WithAsync(async (operators, reading, _) =>
        {
            var card = await OperatorCommand.NeedAsync(operators, parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            if (parsed.GetValue(state) is { } word && !MailState.All.Contains(word)) throw new CommandException($"There is no state \"{word}\": give one of {string.Join(", ", MailState.All)}.");
            foreach (var line in await reading.ListAsync(card.Id, new MailFilter(parsed.GetValue(state), Unclear: parsed.GetValue(unclear)), null, MostListed, ct))
                Console.WriteLine($"{line.Message}\t{line.State}\t{line.Attempts} attempts, {line.Unclear} unclear\t{line.Recipient}\t{line.IssuedAt:u}\t{line.Why ?? ""}");
        }));
        return command;
    }

    private static Command Again()
    {
        var message = new Argument<string>("message") { Description = "Key of the message, as \"fleetwake mail list\" shows it." };
        var command = new Command("again", "Sends a message again. One that was accepted goes as another message, and may stand twice in the mailbox. Needs FLEETWAKE_DB.") { OperatorCommand.Operator, message };
        command.SetAction((parsed, ct) => WithAsync(async (operators, _, again) =>
        {
            var card = await OperatorCommand.NeedAsync(operators, parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            Console.WriteLine(await again.SendAsync(card, parsed.GetRequiredValue(message), null, ct) switch
            {
                Resend.Queued => "it is tried again, under its old Message-ID",
                Resend.AsAnother => "it was accepted before: it goes again as another message",
                Resend.OnItsWay => throw new CommandException("It is on its way already."),
                Resend.NotKept => throw new CommandException("Its text is not kept any more: \"fleetwake digest\" writes the digest of any day."),
                Resend.ReaderLeft => throw new CommandException("Its reader left or was forgotten: nothing is sent there."),
                Resend.TakesNoMail => throw new CommandException("Its address takes no mail: \"fleetwake mail mend ADDRESS\" lets it be tried again."),
                _ => throw new CommandException("There is no such message."),
            });
        }));
        return command;
    }

    private static Command Mend()
    {
        var address = new Argument<string>("address") { Description = "Mail address." };
        var command = new Command("mend", "Lets an address be tried again that a server refused for good. Needs FLEETWAKE_DB.") { OperatorCommand.Operator, address };
        command.SetAction((parsed, ct) => WithAsync(async (operators, _, _) =>
        {
            var card = await OperatorCommand.NeedAsync(operators, parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            var given = parsed.GetRequiredValue(address);
            if (!await operators.TryAgainAsync(card, given, null, ct)) throw new CommandException($"Nothing on record says that \"{given}\" takes no mail.");
            Console.WriteLine($"{given} is tried again with the next message");
        }));
        return command;
    }

    private static Command Key()
    {
        var domain = new Option<string>("--domain") { Description = "Domain that signs, e.g. fleet.example.", Required = true };
        var selector = new Option<string>("--selector") { Description = "Name of the key there, e.g. fw2026: a new one for each key.", Required = true };
        var file = new Option<string>("--out") { Description = "File that the private key is written to; it must not be there yet.", Required = true };
        var ed25519 = new Option<bool>("--ed25519") { Description = "An Ed25519 key in place of RSA: short, and not read by every receiver yet." };
        var command = new Command("dkim-key", "Makes a key that signs mail (DKIM), and prints the record for DNS that goes with it.") { domain, selector, file, ed25519 };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            if (!IsName(parsed.GetRequiredValue(domain), dotted: true)) throw new CommandException($"--domain \"{parsed.GetRequiredValue(domain)}\" is no domain: give it as in fleet.example.");
            if (!IsName(parsed.GetRequiredValue(selector), dotted: false)) throw new CommandException($"--selector \"{parsed.GetRequiredValue(selector)}\" is no name in DNS: give letters, digits and hyphens, as in fw2026.");
            if (File.Exists(path)) throw new CommandException($"--out \"{path}\" is there already: a key that may be in use is not written over. Give another name.");
            var pem = DkimKey.MakePem(parsed.GetValue(ed25519));
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using (var written = new StreamWriter(path, options)) written.Write(pem);
            var key = new DkimKey(parsed.GetRequiredValue(domain), parsed.GetRequiredValue(selector), DkimKey.Read(pem));
            Console.WriteLine($"{key.RecordName}. IN TXT {string.Join(' ', key.Record().Chunk(250).Select(part => $"\"{new string(part)}\""))}");
            Console.Error.WriteLine($"Put that record into DNS first; then set FLEETWAKE_DKIM_KEY={path} and FLEETWAKE_DKIM_SELECTOR={key.Selector}, or the FLEETWAKE_DKIM_NEXT_ ones to let it take over on a day.");
            return 0;
        });
        return command;
    }

    private static bool IsName(string text, bool dotted) =>
        text.Split('.') is var parts && (!dotted || parts.Length > 1) && parts.All(p => p.Length is > 0 and <= 63 && p[0] != '-' && p[^1] != '-' && p.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'));

    private static Command Hook()
    {
        var address = new Option<string?>("--address") { Description = "Https address that alerts are posted to from now on." };
        var off = new Option<bool>("--off") { Description = "Hand alerts to no address any more." };
        var command = new Command("hook", "Hands an operator's alerts to an address as well (a webhook), signed; off until set. Says what became of the last ones when nothing is given. Needs FLEETWAKE_DB.") { OperatorCommand.Operator, address, off };
        command.SetAction(async (parsed, ct) =>
        {
            await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
            using var store = FleetStore.Open(source);
            var hooks = new AlertHooks(store, source, TimeProvider.System);
            var card = await OperatorCommand.NeedAsync(new FleetOperators(store, TimeProvider.System), parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            if (parsed.GetValue(off))
            {
                Console.WriteLine(await hooks.EndAsync(card, null, ct) ? "alerts are handed to no address any more" : throw new CommandException("No address was set."));
            }
            else if (parsed.GetValue(address) is { } given)
            {
                if ((HookPost.WhyNot(given) ?? await new HookPost(TimeProvider.System).WhyNotThereAsync(new Uri(given), ct)) is { } why) throw new CommandException($"\"{given}\" cannot be set: {why}.");
                Console.WriteLine(await hooks.SetAsync(card, new Uri(given), null, ct));
                Console.Error.WriteLine($"That secret signs each alert ({HookPost.SignatureHeader}); it is shown this once.");
            }
            else
            {
                Console.WriteLine(await hooks.FindAsync(card.Id, ct) is { } hook ? $"alerts are handed to {hook}" : "alerts are handed to no address");
                foreach (var handed in await hooks.ListAsync(card.Id, MostListed, ct)) Console.WriteLine($"{handed.Alert}\t{handed.State}\t{handed.Attempts} attempts\t{handed.QueuedAt:u}\t{handed.Why}");
            }

            return 0;
        });
        return command;
    }

    private static Command Hold()
    {
        var command = new Command("hold", "Keeps all mail in, of every operator: nothing is issued or sent until \"fleetwake mail release\". For a database that was restored from a backup, before \"fleetwake work\" starts on it. Needs FLEETWAKE_DB.");
        command.SetAction(async (_, ct) =>
        {
            await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
            using var store = FleetStore.Open(source);
            await new MailHolds(store, TimeProvider.System).HoldAsync(ct);
            Console.WriteLine("all mail is kept in until \"fleetwake mail release\"");
            return 0;
        });
        return command;
    }

    private static Command Release()
    {
        var command = new Command("release", "Lets mail go out again that \"fleetwake mail hold\" keeps in, and says how much waits and how much of that went out before by the journal (FLEETWAKE_MAIL_JOURNAL). Needs FLEETWAKE_DB.");
        command.SetAction(async (_, ct) =>
        {
            var settings = FleetSettings.FromEnvironment();
            await using var source = NpgsqlDataSource.Create(settings.NeedDatabase());
            using var store = FleetStore.Open(source);
            var waiting = await new MailLedger(store, source, TimeProvider.System).WaitingAsync(ct);
            using var journal = settings.Mail.Journal is { } folder ? new MailJournal(folder, TimeProvider.System) : null;
            var taken = journal is null ? 0 : waiting.Count(journal.WasTaken);
            if (!await new MailHolds(store, TimeProvider.System).ReleaseAsync(ct)) throw new CommandException("Mail is not kept in.");
            Console.WriteLine($"mail goes out: {waiting.Count} messages wait, {taken} of them went out before by the journal and are not sent again");
            if (journal is null) Console.Error.WriteLine("fleetwake: FLEETWAKE_MAIL_JOURNAL is not set: what went out after the backup is not known, and may go out twice");
            return 0;
        });
        return command;
    }

    private static async Task<int> WithAsync(Func<FleetOperators, MailReading, MailAgain, Task> run)
    {
        await using var source = NpgsqlDataSource.Create(FleetSettings.FromEnvironment().NeedDatabase());
        using var store = FleetStore.Open(source);
        var reading = new MailReading(store, source);
        await run(new FleetOperators(store, TimeProvider.System), reading, new MailAgain(reading, new MailResends(store, source, TimeProvider.System)));
        return 0;
    }
}
