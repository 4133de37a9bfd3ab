using System.CommandLine;
using FleetWake.Commands;

var root = new RootCommand(
    """
    FleetWake keeps the record of a fleet's propellers and tells whose RPM leaves its rated band, and when.

    Try it:            fleetwake demo
    Set up a fleet:    fleetwake schema, fleetwake operator open NAME ..., fleetwake key make --operator NAME
    Run it:            fleetwake serve   (the API)   and   fleetwake work   (findings, digests, mail)
    Ask it:            fleetwake digest --operator NAME --date YYYY-MM-DD --out FOLDER, fleetwake check

    Figures are a decision aid: the owner's manual, local rules and a licensed technician win.
    """)
{
    DemoCommand.Make(),
    ServeCommand.Make(),
    WorkCommand.Make(),
    ImportCommand.Make(),
    AssessCommand.Make(),
    LearnCommand.Make(),
    FleetCommand.Make(),
    PitchCommand.Make(),
    ConvertCommand.Make(),
    DriftCommand.Make(),
    TrialCommand.Make(),
    PriorCommand.Make(),
    DigestCommand.Make(),
    TemplatesCommand.Make(),
    CheckCommand.Make(),
    SchemaCommand.Make(),
    OperatorCommand.Make(),
    MailCommand.Make(),
    PersonCommand.Make(),
    KeyCommand.Make(),
    SettingsCommand.Make(),
};

// Time to let work in hand finish and a private server stop; a second Ctrl-C does not wait.
var invocation = new InvocationConfiguration { ProcessTerminationTimeout = TimeSpan.FromSeconds(40), EnableDefaultExceptionHandler = false };
return await Outcome.OfAsync(() => root.Parse(args).InvokeAsync(invocation));
