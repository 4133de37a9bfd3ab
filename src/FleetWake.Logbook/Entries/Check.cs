using System.Text.RegularExpressions;

namespace FleetWake.Logbook.Entries;

/// <summary>
/// Reads the fields of one record and collects every refusal, so that a person mends all at once.
/// Each method returns a usable value or a stand-in; a decision with refusals never looks at stand-ins.
/// </summary>
public sealed partial class Check
{
    private const int LongestName = 80;
    private readonly List<Refusal> refusals = [];

    /// <summary>Adds a refusal.</summary>
    public void Refuse(string field, string reason, string message) => refusals.Add(new Refusal(field, reason, message));

    /// <summary>The decision: refusals if there are any, else what <paramref name="keep"/> makes.</summary>
    public Decision Decide(Func<Decision.Keep> keep) =>
        refusals.Count > 0 ? new Decision.Refuse([.. refusals]) : keep();

    /// <summary>A required value.</summary>
    public T Required<T>(T? value, string field, string how)
        where T : struct
    {
        if (value is { } given) return given;
        Refuse(field, "missing", $"missing: {how}");
        return default;
    }

    /// <summary>An id of a boat, engine, prop, person or device: 1 to 40 letters, digits, dots, hyphens and underscores.</summary>
    public string Id(string? value, string field)
    {
        if (string.IsNullOrWhiteSpace(value))
        {
            Refuse(field, "missing", "missing: give the id");
            return "";
        }

        if (!IdPattern().IsMatch(value))
            Refuse(field, "not_an_id", $"\"{Short(value)}\" is not an id: use 1 to 40 letters, digits, dots, hyphens and underscores, beginning with a letter or digit");
        return value;
    }

    /// <summary>A name for people, at most 80 characters on one line.</summary>
    public string Name(string? value, string field)
    {
        var name = value?.Trim() ?? "";
        if (name.Length == 0) Refuse(field, "missing", "missing: give a name");
        else if (name.Length > LongestName || name.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029'))
            Refuse(field, "not_a_name", $"a name is one line of at most {LongestName} characters");
        return name;
    }

    /// <summary>A required number within limits that nothing true can leave.</summary>
    public double Number(double? value, string field, double least, double most, string unit)
    {
        if (value is { } given) return Within(given, field, least, most, unit);
        Refuse(field, "missing", $"missing: give a number in {unit}");
        return least;
    }

    /// <summary>An optional number within limits.</summary>
    public double? Maybe(double? value, string field, double least, double most, string unit) =>
        value is { } given ? Within(given, field, least, most, unit) : null;

    /// <summary>A required whole number within limits.</summary>
    public int Whole(int? value, string field, int least, int most, string unit) =>
        (int)Number(value, field, least, most, unit);

    /// <summary>A required word of an enumeration.</summary>
    public T OneOf<T>(string? word, string field)
        where T : struct, Enum
    {
        if (word is null)
            Refuse(field, "missing", $"missing: give one of {Listed(typeof(T))}");
        else if (Words.TryRead<T>(word, out var value))
            return value;
        else
            Refuse(field, "unknown_word", $"\"{Short(word)}\" is not known here: give one of {Listed(typeof(T))}");
        return default;
    }

    /// <summary>A list with at least <paramref name="least"/> and at most <paramref name="most"/> items.</summary>
    public IReadOnlyList<T> List<T>(IReadOnlyList<T>? items, string field, int least, int most)
    {
        var given = items ?? [];
        if (given.Count < least) Refuse(field, "too_few", $"give at least {least}");
        if (given.Count > most) Refuse(field, "too_many", $"give at most {most}");
        return given.Count > most ? [] : given;
    }

    /// <summary>Refuses a list that names one thing twice. Looks at the words as sent, for two unknown words are not the same thing.</summary>
    public void Once(IEnumerable<string?> words, string field, string message)
    {
        if (words.OfType<string>().GroupBy(w => w, StringComparer.Ordinal).Any(g => g.Count() > 1)) Refuse(field, "named_twice", message);
    }

    /// <summary>A zone name of the IANA database that this machine knows.</summary>
    public TimeZoneInfo? Zone(string? zone, string field)
    {
        if (string.IsNullOrWhiteSpace(zone)) Refuse(field, "missing", "missing: give the dock's IANA zone, e.g. Pacific/Auckland");
        else if (ZonePattern().IsMatch(zone) && TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found)) return found;
        else if (zone is "UTC") return TimeZoneInfo.Utc;
        else Refuse(field, "unknown_zone", $"\"{Short(zone)}\" is not a zone known here: give an IANA name such as Pacific/Auckland");
        return null;
    }

    private double Within(double value, string field, double least, double most, string unit)
    {
        if (double.IsFinite(value) && value >= least && value <= most) return value;
        Refuse(field, "out_of_range", $"{value} {unit} cannot be: give {least} to {most} {unit}");
        return least;
    }

    private static string Listed(Type words) => string.Join(", ", Words.All(words));

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";

    [GeneratedRegex(@"\A[A-Za-z0-9][A-Za-z0-9._-]{0,39}\z")]
    private static partial Regex IdPattern();

    // Only names of the database proper: the machine also takes paths, and its posix/ and right/ trees.
    [GeneratedRegex(@"\A[A-Z][A-Za-z]*(/[A-Za-z0-9_+-]+){1,2}\z")]
    private static partial Regex ZonePattern();
}
