using System.Globalization;
using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests;

/// <summary>The usual boat (band 5000 to 6000, tachometer step 10) with a trial every twenty days from 25 January, each with its hours.</summary>
internal static class Trialled
{
    public static Fleet Boat(params (double Hours, double Rpm)[] trials) =>
        Dock.OneBoat().With(trials.Select((t, i) => (ICommand)Dock.Trial(Day(i), t.Rpm, t.Hours)));

    /// <summary>When the trial of this number is run; half numbers lie between two.</summary>
    public static string Day(double trial) =>
        new DateTime(2026, 1, 25, 10, 0, 0).AddDays(20 * trial).ToString("yyyy-MM-ddTHH:mmZ", CultureInfo.InvariantCulture);

    public static MountingFinding Mounting(this Fleet fleet) => fleet.Finding().Positions.Single().Mounting!;
}
