using System.Buffers.Text;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Devices;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>A phone at a dock: it has a key that it never tells, and what the server gave it.</summary>
internal sealed class DockPhone : IDisposable
{
    private readonly ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);

    private DockPhone(RunningFleet fleet) => Http = new HttpClient { BaseAddress = fleet.Http.BaseAddress };

    public HttpClient Http { get; }

    /// <summary>Id that the server gave it.</summary>
    public string Device { get; private set; } = "";

    /// <summary>What enrolling answered.</summary>
    public JsonObject Enrolled { get; private set; } = [];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>A phone without a dock.</summary>
    public static DockPhone New(RunningFleet fleet) => new(fleet);

    /// <summary>A phone that is enrolled.</summary>
    public static async Task<DockPhone> EnrolledAsync(RunningFleet fleet, string dock = "old-mole")
    {
        var phone = New(fleet);
        using var answer = await phone.EnrolAsync(await CodeAsync(fleet, dock));
        answer.EnsureSuccessStatusCode();
        return phone;
    }

    /// <summary>A code as the office shows it.</summary>
    public static async Task<string> CodeAsync(RunningFleet fleet, string dock = "old-mole") =>
        (await fleet.Service<FleetDevices>().MakeCodeAsync(RunningFleet.Operator, dock, "phone by the pump", "boss", Ct)).Code;

    /// <summary>Shows a code to the server.</summary>
    public async Task<HttpResponseMessage> EnrolAsync(string code, string? carries = null)
    {
        var asked = new JsonObject { ["code"] = code, ["name"] = "phone by the pump", ["publicKey"] = Jwk() };
        if (carries is not null) asked["operator"] = carries;
        var answer = await Http.PostAsJsonAsync("/dock/api/enrol", asked, Ct);
        if (!answer.IsSuccessStatusCode) return answer;
        Enrolled = (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!;
        Device = Enrolled["device"]!.GetValue<string>();
        Carry(Enrolled["token"]!.GetValue<string>());
        return answer;
    }

    /// <summary>Carries a token from now on.</summary>
    public void Carry(string token) => Http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);

    /// <summary>Signs for the next token, with its own key or another's.</summary>
    public Task<HttpResponseMessage> AskTokenAsync(DateTimeOffset at, ECDsa? with = null)
    {
        var text = at.ToString("o");
        var signature = (with ?? key).SignData(Encoding.UTF8.GetBytes($"fleetwake-token\n{Device}\n{text}"), HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);
        return Http.PostAsJsonAsync("/dock/api/token", new JsonObject { ["device"] = Device, ["at"] = text, ["signature"] = Base64Url.EncodeToString(signature) }, Ct);
    }

    /// <summary>Sends a batch as it stands.</summary>
    public Task<HttpResponseMessage> PostAsync(JsonArray records, DateTimeOffset? sentAt = null, string? device = null)
    {
        var batch = new JsonObject { ["device"] = device ?? Device, ["records"] = records };
        if (sentAt is { } at) batch["sentAt"] = at.ToString("o");
        return Http.PostAsJsonAsync("/dock/api/records", batch, Ct);
    }

    /// <summary>Sends records and returns what became of each.</summary>
    public async Task<JsonArray> SendAsync(IEnumerable<ICommand> records, DateTimeOffset? sentAt = null)
    {
        using var answer = await PostAsync([.. records.Select(BatchJson.Write)], sentAt);
        answer.EnsureSuccessStatusCode();
        return (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!["results"]!.AsArray();
    }

    public void Dispose()
    {
        Http.Dispose();
        key.Dispose();
    }

    private JsonObject Jwk()
    {
        var point = key.ExportParameters(includePrivateParameters: false).Q;
        return new JsonObject { ["kty"] = "EC", ["crv"] = "P-256", ["x"] = Base64Url.EncodeToString(point.X), ["y"] = Base64Url.EncodeToString(point.Y) };
    }
}
