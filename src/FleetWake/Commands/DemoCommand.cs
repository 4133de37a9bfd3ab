using System.CommandLine;
using FleetWake.Demo;

namespace FleetWake.Commands;

internal static class DemoCommand
{
    public static Command Make()
    {
        var once = new Option<bool>("--once") { Description = "End when the digest is out, with a line of totals." };
        var folder = new Option<string?>("--out") { Description = "Folder for the mail, new or existing; a new one in the temp folder when not given." };
        var command = new Command(
            "demo",
            "Shows the whole way with an invented fleet: brings its own PostgreSQL (or uses FLEETWAKE_DB), sends two years of records through the API, and mails the weekly digest into a folder.")
        {
            once, folder,
        };
        command.SetAction((parsed, ct) =>
        {
            var given = parsed.GetValue(folder);
            var path = given is null ? Directory.CreateTempSubdirectory("fleetwake-demo-mail-").FullName : Path.GetFullPath(given);
            return new DemoRun(path, parsed.GetValue(once)).RunAsync(ct);
        });
        return command;
    }
}
