using System.CommandLine;
using FleetWake.Trials;

namespace FleetWake.Commands;

internal static class PitchCommand
{
    public static Command Make()
    {
        var engine = new Option<string>(EngineOption.Name) { Description = EngineOption.Syntax, Required = true };
        var prop = new Option<string>(PropOption.Name) { Description = PropOption.Syntax, Required = true };
        var rpm = new Option<string>("--rpm") { Description = PitchRequest.RpmSyntax, Required = true };
        var available = new Option<string?>("--available") { Description = "Pitches to be had, such as 17,18,19,20,21 in inches or with mm; three inches up and down, within 3 to 40 in, when not given." };
        var load = new Option<string?>(LoadOption.Name) { Description = LoadOption.Syntax };
        var mass = new Option<string?>("--mass") { Description = "Displacement of the boat at the trial, all aboard: 1800kg or 4000lb. Needed for loads in kg or lb." };
        var elasticity = new Option<string?>("--elasticity") { Description = "Per cent of RPM by per cent of pitch, with its standard deviation; -0.73+-0.15 when nothing is learned." };
        var json = new Option<bool>("--json") { Description = "Print one JSON object." };
        var command = new Command(
            "pitch",
            "Says where each pitch would land against the rated band, at every load, and how surely; and the fewest props that keep every load in it. Needs no database. Exit 1 when an option cannot be read.")
        {
            engine, prop, rpm, available, load, mass, elasticity, json,
        };
        command.SetAction(parsed =>
        {
            var request = PitchRequest.Read(
                parsed.GetRequiredValue(engine), parsed.GetRequiredValue(prop), parsed.GetRequiredValue(rpm),
                parsed.GetValue(available), parsed.GetValue(load), parsed.GetValue(mass), parsed.GetValue(elasticity));
            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json)) output.WriteLine(PitchJson.Of(request));
            else output.Write(PitchText.Of(request));
            return 0;
        });
        return command;
    }
}
