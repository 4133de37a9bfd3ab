using System.Text.Json;

namespace FleetWake.Trials;

/// <summary>How answers of <c>trial</c> and <c>pitch</c> are written as JSON.</summary>
internal static class AnswerJson
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>One object, indented.</summary>
    public static string Write(object answer) => JsonSerializer.Serialize(answer, s_options);

    /// <summary>A declared name as a short code: <c>double_run</c>.</summary>
    public static string Snake<T>(T name)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(name.ToString());

    /// <summary>Six decimals unless fewer are asked for: more than any instrument has, and no tail of binary digits.</summary>
    public static double? Round(double? value, int decimals = 6) => value is { } v ? Math.Round(v, decimals) : null;
}
