using System.CommandLine;
using System.Text.Json;
using FleetWake.Commands;
using FleetWake.Journey.Tests.Import;

namespace FleetWake.Journey.Tests.Figures;

/// <summary>The command "fleet" as it is typed, with a folder of sheets.</summary>
public sealed class FleetCommandTests : IDisposable
{
    private readonly SheetFolder folder = new SheetFolder()
        .With("boat_registered.csv", "happened_at,boat,name,dock,dock_zone,water,positions", "2026-01-01 09:00,tern,Tern,old-mole,Pacific/Auckland,salt,single")
        .With("engine_registered.csv", "happened_at,engine,model,band_low_rpm,band_high_rpm,gear_ratio,rated_power,rated_power_unit,nut_torque,nut_torque_unit,tachometer_step_rpm", "2026-01-01 09:00,e-tern,Skerry 50,5000,6000,2.08,50,hp,25,pound_force_foot,10")
        .With("engine_fitted.csv", "happened_at,boat,position,engine,hours", "2026-01-01 09:05,tern,single,e-tern,0")
        .With("prop_registered.csv", "happened_at,prop,diameter_inches,pitch_inches,blades,material,rotation", "2026-01-01 09:00,p-1,11.5,13,3,aluminium,right")
        .With("prop_mounted.csv", "happened_at,boat,position,prop,hours", "2026-01-01 10:00,tern,single,p-1,0")
        .With("hours_read.csv", "happened_at,engine,hours", "2026-06-01 10:00,e-tern,250");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void One_boat_without_any_strike_is_told_in_words()
    {
        var (exit, output, error) = Run(folder.Path);
        Assert.Equal((0, ""), (exit, error));
        Assert.Matches(@"aluminium\s+1\s+0\s+250\s+too few", output);
        Assert.Contains("Prices are not set", output, StringComparison.Ordinal);
        Assert.Contains("no strike in 250 engine hours", output, StringComparison.Ordinal);
        Assert.Contains("11.5 x 13 aluminium, 3 blades, right", output, StringComparison.Ordinal);
        Assert.Contains("A decision aid: the owner's manual", output, StringComparison.Ordinal);
        Assert.EndsWith("fleet: 6 rows, refused 0\n", output, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_lead_time_and_the_service_level_are_those_given()
    {
        var spares = Json("--lead-time", "365", "--service", "0.99", "--season", "2").GetProperty("spares");
        Assert.Equal(365, spares.GetProperty("question").GetProperty("leadTimeDays").GetDouble());
        Assert.True(spares.GetProperty("sizes")[0].GetProperty("baseStock").GetInt32() > Json().GetProperty("spares").GetProperty("sizes")[0].GetProperty("baseStock").GetInt32());
    }

    [Theory]
    [InlineData("--lead-time", "0")]
    [InlineData("--service", "1")]
    [InlineData("--service", "NaN")]
    [InlineData("--season", "-1")]
    public void A_number_out_of_range_is_told_by_its_option(string option, string value) =>
        Assert.StartsWith(option, Assert.Throws<CommandException>(() => Run(folder.Path, option, value)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_row_that_cannot_be_read_goes_into_the_report_and_is_no_success()
    {
        folder.With("hours_read.csv", "happened_at,engine,hours", "2026-06-01 10:00,e-tern,-3");
        Assert.Equal(1, Run(folder.Path).Exit);
        Assert.Equal(2, folder.Report.Length);
    }

    private JsonElement Json(params string[] options)
    {
        var (exit, output, error) = Run([folder.Path, "--json", .. options]);
        Assert.Equal((0, "fleet: 6 rows, refused 0\n"), (exit, error));
        return JsonDocument.Parse(output).RootElement;
    }

    private static (int Exit, string Output, string Error) Run(params string[] typed)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exit = FleetCommand.Make().Parse([.. typed, "--by", "office", "--zone", "Pacific/Auckland"]).Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false });
        return (exit, output.ToString(), error.ToString());
    }
}
