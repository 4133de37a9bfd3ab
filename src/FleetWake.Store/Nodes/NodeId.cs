using System.Security.Cryptography;

namespace FleetWake.Store.Nodes;

/// <summary>
/// One process of the program. Its database sessions carry this id in their application name, so that others can end
/// them when the process stands still: a frozen process keeps its locks, and nothing else tells whose they are.
/// </summary>
/// <param name="Value">Machine, process and a drawn part: two containers may share machine name and process id.</param>
public sealed record NodeId(string Value)
{
    internal const string Prefix = "fleetwake ";
    private const int LongestMachine = 24;

    /// <summary>The application name of this process's sessions; within PostgreSQL's 63 bytes.</summary>
    public string ApplicationName => Prefix + Value;

    /// <summary>A new id for this process.</summary>
    public static NodeId Make()
    {
        var machine = string.Concat(Environment.MachineName.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        return new NodeId($"{machine[..Math.Min(machine.Length, LongestMachine)]}-{Environment.ProcessId}-{RandomNumberGenerator.GetHexString(6, lowercase: true)}");
    }

    /// <inheritdoc/>
    public override string ToString() => Value;
}
