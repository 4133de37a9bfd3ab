using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using FleetWake.Commands;

namespace FleetWake.Journey.Tests.Trials;

/// <summary>The command "trial" as it is typed, with its files.</summary>
public sealed class TrialCommandTests : IDisposable
{
    private const string Boat = "gear=2.08,step=10,band=5000-6000";
    private readonly string folder = Directory.CreateTempSubdirectory("fleetwake-trial-test-").FullName;

    public TrialCommandTests()
    {
        File.WriteAllText(In("now.csv"), "rpm,speed_kn,heading_deg\n5890,25.7,40\n5890,25.7,220\n");
        File.WriteAllText(In("spring.csv"), "rpm,speed_kn,heading_deg\n5650,26.05,40\n5650,26.05,220\n");
        File.WriteAllText(In("track.csv"), Track());
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_answer_is_printed_and_the_pictures_are_made()
    {
        var (exit, output, error) = Run(In("now.csv"), "--engine", Boat, "--prop", "11.5x13", "--baseline", In("spring.csv"), "--picture", In("a.png"), "--cause-map", In("b.png"));
        Assert.Equal((0, ""), (exit, error));
        Assert.Contains("Against the baseline: +4.2 +/- ", output, StringComparison.Ordinal);
        Assert.EndsWith("\nA decision aid: the owner's manual, local rules and a licensed technician win.\n", output, StringComparison.Ordinal);
        Assert.All(new[] { "a.png", "b.png" }, name => Assert.True(new FileInfo(In(name)).Length > 1000));
    }

    [Theory]
    [InlineData("--picture", "missing/a.png", "is in a folder that does not exist")]
    [InlineData("--picture", ".", "is a folder")]
    [InlineData("--cause-map", "b.png", "name the trial to hold this one against with --baseline")]
    public void A_picture_that_cannot_be_made_is_told_after_the_answer(string option, string path, string why)
    {
        var (exit, output, error) = Run(In("now.csv"), "--engine", Boat, "--json", option, In(path));
        Assert.Equal(1, exit);
        using var json = JsonDocument.Parse(output);
        Assert.Equal(5890, json.RootElement.GetProperty("rpm").GetDouble());
        Assert.StartsWith($"fleetwake: {option}", Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains(why, error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_baseline_that_cannot_be_compared_withholds_no_answer_and_is_no_failure()
    {
        string[] typed = [In("now.csv"), "--engine", Boat, "--prop", "11.5x13", "--baseline", In("spring.csv"), "--limiter"];
        var (exit, output, error) = Run(typed);
        Assert.Equal((0, ""), (exit, error));
        Assert.Contains("not compared; the trial shows no RPM at wide-open throttle", output, StringComparison.Ordinal);
        (exit, output, error) = Run([.. typed, "--cause-map", In("b.png")]);
        Assert.Equal(1, exit);
        Assert.Contains("Trial of 2 runs", output, StringComparison.Ordinal);
        Assert.Contains("--cause-map: not drawn; the trial shows no RPM at wide-open throttle", error, StringComparison.Ordinal);
    }

    [Fact]
    public void RPM_of_the_trial_is_never_taken_for_the_baseline()
    {
        string[] typed = [In("track.csv"), "--rpm", "5890", "--engine", Boat, "--prop", "11.5x13", "--baseline", In("track.csv")];
        var told = Refused(typed);
        Assert.StartsWith("--baseline: no run of a trial in track.csv", told, StringComparison.Ordinal);
        Assert.Contains("give --baseline-rpm 5600", told, StringComparison.Ordinal);
        var (exit, output, _) = Run([.. typed, "--baseline-rpm", "5650", "--json"]);
        Assert.Equal(0, exit);
        using var json = JsonDocument.Parse(output);
        Assert.Equal((5890.0 / 5650) - 1, json.RootElement.GetProperty("againstBaseline").GetProperty("rpmChange").GetDouble(), 1e-6);
        Assert.StartsWith("--baseline: --baseline-rpm: 3 engine rates are given for 2 runs", Refused([.. typed, "--baseline-rpm", "5650,5650,5650"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3", "9", true)]
    [InlineData("3", "4", false)]
    public void Trim_unlike_the_baselines_is_told(string now, string then, bool told)
    {
        var (_, output, _) = Run(In("now.csv"), "--engine", Boat, "--prop", "11.5x13", "--baseline", In("spring.csv"), "--trim", now, "--baseline-trim", then);
        Assert.Equal(told, output.Contains("trim_unlike: ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("--picture \"\" is no file", "now.csv", "--picture", "")]
    [InlineData("--cause-map \" \" is no file", "now.csv", "--cause-map", " ")]
    [InlineData("--baseline \"\" is no file", "now.csv", "--baseline", "")]
    [InlineData("--rpm-log \"\" is no file", "now.csv", "--rpm-log", "")]
    [InlineData("--baseline: there is no file", "now.csv", "--baseline", "nowhere.csv")]
    [InlineData("--rpm-log: \"/\" is a folder", "now.csv", "--rpm-log", "/")]
    [InlineData("file: there is no file", "nowhere.csv")]
    [InlineData("--ventilated and --no-ventilation", "now.csv", "--ventilated", "--no-ventilation")]
    [InlineData("for --rpm-log and --baseline", "now.csv", "--rpm-log", "-", "--baseline", "-")]
    [InlineData("would overwrite the file of --cause-map", "now.csv", "--picture", "x.png", "--cause-map", "./x.png")]
    [InlineData("--trim 91 is not -30 to 90", "now.csv", "--trim", "91")]
    [InlineData("--baseline-trim -31 is not -30 to 90", "now.csv", "--baseline", "now.csv", "--baseline-trim", "-31")]
    [InlineData("--rpm \"12001\" is not a number from 300 to 12000", "now.csv", "--rpm", "12001")]
    [InlineData("--baseline-rpm \"x\" is not a number", "now.csv", "--baseline", "now.csv", "--baseline-rpm", "x")]
    [InlineData("--baseline-air: \"18\"", "now.csv", "--baseline", "now.csv", "--baseline-air", "18")]
    public void What_cannot_be_is_refused_by_the_name_of_its_option(string told, string file, params string[] more) =>
        Assert.Contains(told, Refused([In(file), .. more.Select(word => word == "now.csv" ? In(word) : word)]), StringComparison.Ordinal);

    [Fact]
    public void A_picture_never_takes_the_place_of_the_trial() =>
        Assert.Contains("--picture", Refused([In("now.csv"), "--picture", In("now.csv")]), StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData("/")]
    public async Task The_program_says_it_in_one_line_without_a_stack_trace(string file)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "fleetwake.dll"), "trial", file]) { RedirectStandardError = true };
        using var program = Process.Start(start)!;
        var error = await program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(1, program.ExitCode);
        Assert.StartsWith("fleetwake: file", Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    private static (int Exit, string Output, string Error) Run(params string[] typed)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exit = TrialCommand.Make().Parse(typed).Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false });
        return (exit, output.ToString(), error.ToString());
    }

    private static string Refused(string[] typed) => Assert.Throws<CommandException>(() => Run(typed)).Message;

    private string In(string name) => name.Length == 0 ? name : Path.Combine(folder, name);

    /// <summary>A minute out and a minute back, without RPM.</summary>
    private static string Track()
    {
        var text = new StringBuilder("t_s,speed_kn,course_deg\n");
        for (var t = 0; t < 150; t++)
        {
            var (knots, course) = t is >= 70 and < 80 ? (8.0, 130) : (26.0, t < 70 ? 40 : 220);
            text.Append(CultureInfo.InvariantCulture, $"{t},{knots},{course}\n");
        }

        return text.ToString();
    }
}
