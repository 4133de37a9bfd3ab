using System.CommandLine;
using FleetWake.Hosting;

namespace FleetWake.Commands;

internal static class ServeCommand
{
    public static readonly Option<bool> ApplySchema = new("--apply-schema")
    {
        Description = "Bring the database to this version's schema first; safe for many nodes at once.",
    };

    public static Command Make()
    {
        var command = new Command("serve", "Answers the API. Needs FLEETWAKE_DB; listens on FLEETWAKE_URLS.") { ApplySchema };
        command.SetAction((parsed, ct) => Starting.RunAsync(Roles.Serve, parsed.GetValue(ApplySchema), ct));
        return command;
    }
}

internal static class WorkCommand
{
    public static Command Make()
    {
        var command = new Command("work", "Folds the record, assesses boats, issues digests and sends mail. Needs FLEETWAKE_DB.") { ServeCommand.ApplySchema };
        command.SetAction((parsed, ct) => Starting.RunAsync(Roles.Work, parsed.GetValue(ServeCommand.ApplySchema), ct));
        return command;
    }
}
