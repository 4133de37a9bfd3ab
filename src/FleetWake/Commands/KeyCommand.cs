using System.CommandLine;
using FleetWake.Logbook.Entries;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Web.Office;

namespace FleetWake.Commands;

internal static class KeyCommand
{
    public static Command Make() => new("key", "Makes, lists and revokes API keys. Needs FLEETWAKE_DB.") { MakeKey(), List(), Revoke() };

    private const int MostDays = 3650;

    private static Command MakeKey()
    {
        var name = new Option<string>("--name") { Description = "What the key is for.", DefaultValueFactory = _ => "api" };
        var readOnly = new Option<bool>("--read-only") { Description = "The key may read, and not send records." };
        var calendar = new Option<bool>("--calendar") { Description = "The key opens the calendar of due dates and nothing else; its address is printed too." };
        var bounces = new Option<bool>("--bounces") { Description = "The key hands in reports of undeliverable mail and does nothing else." };
        var days = new Option<int?>("--days") { Description = "The key ends by itself after so many days; it does not when not given." };
        var command = new Command("make", "Makes a key and prints it; it is shown this once, only its hash is kept.") { OperatorCommand.Operator, name, readOnly, calendar, bounces, days };
        command.SetAction((parsed, ct) => OperatorCommand.WithAsync(async operators =>
        {
            var card = await OperatorCommand.NeedAsync(operators, parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            var feed = parsed.GetValue(calendar);
            if (parsed.GetValue(bounces) && (feed || parsed.GetValue(readOnly))) throw new CommandException("Give --bounces alone: such a key stands in a mail server's settings, and opens nothing else.");
            if (feed && parsed.GetValue(readOnly)) throw new CommandException("Give --read-only or --calendar, not both: a calendar key opens the calendar alone.");
            KeyScope[] scopes = parsed.GetValue(bounces) ? [KeyScope.Bounce] : feed ? [KeyScope.Calendar] : parsed.GetValue(readOnly) ? [KeyScope.Read] : [KeyScope.Record, KeyScope.Read];
            if (parsed.GetValue(days) is < 1 or > MostDays) throw new CommandException($"--days is {parsed.GetValue(days)}: give 1 to {MostDays}, or leave it out for a key that does not end by itself.");
            var key = await operators.MakeKeyAsync(card.Id, parsed.GetRequiredValue(name), scopes, ct, parsed.GetValue(days) is { } lasts ? TimeSpan.FromDays(lasts) : null);
            Console.WriteLine(key);

            // The key stands alone on standard output, for scripts that keep it.
            Console.Error.WriteLine($"The id of this key is {KeySecret.IdOf(key)}: \"fleetwake key revoke {KeySecret.IdOf(key)}\" ends it.");
            if (feed) Console.Error.WriteLine($"{Subscribe(FleetSettings.FromEnvironment().PublicUrl, DueCalendar.PathOf(key))} Add ?dock=ID for one dock. Whoever has the address can read it: revoke the key to end that.");
        }));
        return command;
    }

    private static string Subscribe(Uri? publicUrl, string path) => publicUrl is null
        ? $"Subscribe a calendar to the address under which \"fleetwake serve\" is reached, followed by {path} (with FLEETWAKE_PUBLIC_URL set, it is printed whole)."
        : $"Subscribe a calendar to {publicUrl.AbsoluteUri.TrimEnd('/')}{path}";

    private static Command List()
    {
        var command = new Command("list", "Lists an operator's keys: id, name, scopes, when made, until when, last use to the hour, and whether in use. The keys themselves are not kept.") { OperatorCommand.Operator };
        command.SetAction((parsed, ct) => OperatorCommand.WithAsync(async operators =>
        {
            var card = await OperatorCommand.NeedAsync(operators, parsed.GetRequiredValue(OperatorCommand.Operator), ct);
            foreach (var key in await operators.KeysAsync(card.Id, ct))
            {
                var until = key.UntilAt is { } end ? $"until {end:u}" : "without end";
                var used = key.UsedAt is { } at ? $"last used {at:u}" : "never used";
                Console.WriteLine($"{key.Id}\t{key.Name}\t{string.Join(',', key.Scopes.Select(s => Words.Of(s)))}\tmade {key.MadeAt:u}\t{until}\t{used}\t{State(key)}");
            }
        }));
        return command;
    }

    private static string State(ApiKey key) =>
        key.RevokedAt is { } at ? $"revoked {at:u}" : key.IsExpired(TimeProvider.System.GetUtcNow()) ? "expired" : "in use";

    private static Command Revoke()
    {
        var id = new Argument<string>("id") { Description = "The key, or its id: the twelve characters between \"fw_\" and the next underscore." };
        var command = new Command("revoke", "Revokes a key at once.") { id };
        command.SetAction((parsed, ct) => OperatorCommand.WithAsync(async operators =>
        {
            var given = parsed.GetRequiredValue(id);
            if (!await operators.RevokeKeyAsync(KeySecret.IdOf(given) ?? given, ct)) throw new CommandException("There is no such key.");
            Console.WriteLine("revoked");
        }));
        return command;
    }
}

internal static class SettingsCommand
{
    public static Command Make()
    {
        var command = new Command("settings", "Lists what can be set in the environment.");
        command.SetAction(_ =>
        {
            foreach (var (name, meaning) in FleetSettings.Known) Console.WriteLine($"{name,-24} {meaning}");
            return 0;
        });
        return command;
    }
}
