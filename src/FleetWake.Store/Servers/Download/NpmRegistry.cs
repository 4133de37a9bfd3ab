using System.ComponentModel;
using System.Diagnostics;

namespace FleetWake.Store.Servers.Download;

/// <summary>The npm registry that this machine is set to use. None stands in the code: a house may allow only its own.</summary>
internal static class NpmRegistry
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Ours first, then npm's variable, then what npm itself would take.</summary>
    public static Uri? Of(Machine machine) =>
        (machine.Variable("FLEETWAKE_NPM_REGISTRY")
            ?? machine.Variable("npm_config_registry")
            ?? machine.Variable("NPM_CONFIG_REGISTRY")
            ?? machine.NpmSetting()) is { } named
        && Uri.TryCreate(named.Trim(), UriKind.Absolute, out Uri? address)
        && address.Scheme is "https" or "http"
            ? address
            : null;

    /// <summary>npm is asked, since it reads four files and has a default of its own; without npm the user's file counts.</summary>
    public static string? Setting() => FromNpm() ?? FromFile();

    private static string? FromNpm()
    {
        try
        {
            string npm = OperatingSystem.IsWindows() ? "npm.cmd" : "npm";
            using Process asked = Process.Start(new ProcessStartInfo(npm, ["config", "get", "registry"])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            Task<string> answer = asked.StandardOutput.ReadToEndAsync();
            if (!asked.WaitForExit(Patience))
                asked.Kill(entireProcessTree: true);
            return asked.HasExited && asked.ExitCode == 0 ? answer.Result.Trim() : null;
        }
        catch (Win32Exception)
        {
            return null; // no npm here
        }
    }

    private static string? FromFile()
    {
        string file = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".npmrc");
        return !File.Exists(file) ? null : File.ReadLines(file)
            .Select(line => line.Split('=', 2, StringSplitOptions.TrimEntries))
            .Where(pair => pair is ["registry", _])
            .Select(pair => pair[1])
            .LastOrDefault();
    }
}
