using System.CommandLine;
using FleetWake.Import.Study;

namespace FleetWake.Commands;

internal static class ConvertCommand
{
    public static Command Make() => new("convert", "Turns tables of other makes into folders that \"import\" and \"assess\" take.") { Study() };

    private static Command Study()
    {
        var folder = new Argument<string>("folder") { Description = "Folder with boats.csv, mountings.csv, trials.csv and events.csv of a drift study." };
        var output = new Option<string>("--out") { Description = "Folder to write to; each fleet gets a folder in it.", Required = true };
        var command = new Command("study", "Converts a drift study, whose RPM is brought to reference conditions already.") { folder, output };
        command.SetAction(parsed =>
        {
            var path = Path.GetFullPath(parsed.GetRequiredValue(output));
            var (fleets, rows) = StudyConversion.Convert(Path.GetFullPath(parsed.GetRequiredValue(folder)), path);
            Console.WriteLine($"convert: {fleets} fleets, {rows} rows in {path}");
            return 0;
        });
        return command;
    }
}
