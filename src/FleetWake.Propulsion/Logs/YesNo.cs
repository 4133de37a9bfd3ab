namespace FleetWake.Propulsion.Logs;

/// <summary>Reads whether something was so, as people write it.</summary>
internal static class YesNo
{
    /// <summary>What may be written, for a notice.</summary>
    internal const string Words = "yes or no (on, off, true, false, 1, 0, x, or nothing for no)";

    /// <summary>The answer; null when the text is none.</summary>
    internal static bool? Of(string text) => text.Trim().ToLowerInvariant() switch
    {
        "yes" or "y" or "on" or "true" or "1" or "x" => true,
        "no" or "n" or "off" or "false" or "0" or "" => false,
        _ => null,
    };
}
