using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Operators;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Api;

/// <summary>The API as a client meets it: what is taken, and what each refusal says and where.</summary>
public sealed class RecordsApiTests(SharedFleet shared) : IClassFixture<SharedFleet>
{
    private readonly DockRecords dock = shared.Dock;
    private readonly RunningFleet fleet = shared.Fleet;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_record_is_created_once_and_its_repeat_gets_the_same_answer()
    {
        var strike = Strike("tern");
        var (first, answer) = await PostAsync(strike);
        Assert.Equal(HttpStatusCode.Created, first);
        Assert.Equal("recorded", Text(answer["outcome"]));

        var (again, same) = await PostAsync(strike);
        Assert.Equal(HttpStatusCode.OK, again);
        Assert.True(same["repeat"]!.GetValue<bool>());
    }

    [Fact]
    public async Task The_same_id_with_other_content_is_a_409_problem()
    {
        var strike = Strike("tern");
        await PostAsync(strike);
        var (status, problem) = await PostAsync(strike with { Severity = "bent" });
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Equal("urn:fleetwake:problem:entry-id-used", Text(problem["type"]));
    }

    [Fact]
    public async Task A_boat_that_is_not_registered_holds_the_record_with_a_reason_beside_the_field()
    {
        var (status, answer) = await PostAsync(Strike("nobody-yet"));
        Assert.Equal(HttpStatusCode.Accepted, status);
        Assert.Equal("held", Text(answer["outcome"]));
        Assert.Equal("/boat", Text(answer["held"]![0]!["field"]));
    }

    [Fact]
    public async Task Every_wrong_field_is_named_at_once_by_its_pointer()
    {
        var trial = dock.Trial("tern", "2026-03-01T10:00:00", rpm: 99_000, hours: 200);
        trial = trial with { Runs = [trial.Runs![0] with { SpeedUnit = "furlong" }, trial.Runs[1] with { HeadingDegrees = 400 }] };
        var (status, problem) = await PostAsync(trial);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        var errors = problem["errors"]!.AsObject().Select(e => e.Key).Order(StringComparer.Ordinal);
        Assert.Equal(["/runs/0/speedUnit", "/runs/0/tachometers/0/rpm", "/runs/1/headingDegrees", "/runs/1/tachometers/0/rpm"], errors);
        Assert.Contains("kn, mph, km_per_h, m_per_s", problem["errors"]!["/runs/0/speedUnit"]![0]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_future_date_is_refused_and_a_wrong_phone_clock_is_taken_off_first()
    {
        var tomorrow = TimeZoneInfo.ConvertTime(TimeProvider.System.GetUtcNow().AddDays(1), TimeZoneInfo.FindSystemTimeZoneById(RunningFleet.Zone));
        var strike = Strike("tern", tomorrow.ToString("yyyy-MM-ddTHH:mm:sszzz"));
        var (status, problem) = await PostAsync(strike);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.NotNull(problem["errors"]!["/entry/happenedAt"]);

        using var request = Request(strike);
        request.Headers.Add("FleetWake-Sent-At", tomorrow.AddMinutes(1).ToString("yyyy-MM-ddTHH:mm:sszzz"));
        using var response = await fleet.Http.SendAsync(request, Ct);
        Assert.Equal(HttpStatusCode.Created, response.StatusCode);
    }

    [Theory]
    [InlineData("""{"kind":"strike_reported","severty":"bent"}""", "/severty", "unknown_field")]
    [InlineData("""{"boat":7}""", "/boat", "wrong_type")]
    [InlineData("""{"entry":{"id":"not-a-uuid"}}""", "/entry/id", "wrong_type")]
    [InlineData("""{"hours":"12"}""", "/hours", "wrong_type")]
    [InlineData("[]", "", "not_an_object")]
    public async Task What_cannot_be_read_is_refused_with_its_place(string json, string field, string reason)
    {
        var (status, problem) = await PostJsonAsync("/api/records/strike_reported", json);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal((field, reason), (Text(problem["refusals"]![0]!["field"]), Text(problem["refusals"]![0]!["reason"])));
    }

    [Theory]
    [InlineData("{")]
    [InlineData("")]
    [InlineData("{\"boat\": NaN}")]
    public async Task Malformed_json_is_a_400_that_says_where(string json)
    {
        var (status, problem) = await PostJsonAsync("/api/records/strike_reported", json);
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("line", Text(problem["detail"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"device":"d","records":[{"kind":"\ud800"}]}""")]
    [InlineData("""{"device":"d","records":[{"\ud800":1}]}""")]
    public async Task Text_that_is_no_unicode_is_a_400_and_no_breakdown(string json)
    {
        var (status, problem) = await PostJsonAsync("/api/records", json);
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("Unicode", Text(problem["detail"]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_field_that_stands_twice_is_a_400_that_says_so()
    {
        var (status, problem) = await PostJsonAsync("/api/records/strike_reported", """{"boat":"a","boat":"b"}""");
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("stands twice", Text(problem["detail"]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_routing_refuses_says_what_to_do()
    {
        using var form = new FormUrlEncodedContent([]);
        using var untyped = await fleet.Http.PostAsync("/api/records/strike_reported", form, Ct);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, untyped.StatusCode);
        Assert.Contains("Content-Type", await untyped.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        using var read = await fleet.Http.GetAsync("/api/nonsense", Ct);
        Assert.Contains("/openapi/v1.json", await read.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        using var sent = await fleet.Http.PostAsync("/api/nonsense", form, Ct);
        Assert.Contains("strike_reported", await sent.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_refused_record_of_a_batch_does_not_stop_the_others()
    {
        var results = await fleet.SendAsync([Strike("tern"), Strike("tern") with { Severity = "awful" }, Strike("tern")], Ct);
        Assert.Equal(["recorded", "refused", "recorded"], results.Select(r => Text(r!["outcome"])));
        Assert.Equal("/severity", Text(results[1]!["refusals"]![0]!["field"]));
    }

    [Theory]
    [InlineData("""{"device":"d"}""", "/records")]
    [InlineData("""{"device":"d","records":[],"x":1}""", "/x")]
    [InlineData("""{"device":"no such device!","records":[]}""", "/device")]
    [InlineData("""{"device":"d","sentAt":"yesterday","records":[]}""", "/sentAt")]
    [InlineData("""{"device":"d","sentAt":"2026-05-03T10:15:00","records":[]}""", "/sentAt")]
    [InlineData("""{"device":"d","sentAt":3,"records":[]}""", "/sentAt")]
    public async Task A_batch_says_what_it_lacks(string json, string field)
    {
        var (status, problem) = await PostJsonAsync("/api/records", json);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.NotNull(problem["errors"]![field]);
    }

    [Fact]
    public async Task A_body_of_five_megabytes_is_not_read()
    {
        var (status, _) = await PostJsonAsync("/api/records", $$"""{"device":"{{new string('x', 5_000_000)}}"}""");
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, status);
    }

    [Fact]
    public async Task Without_a_key_nothing_and_with_a_reading_key_no_record()
    {
        using var nobody = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        Assert.Equal(HttpStatusCode.Unauthorized, (await nobody.GetAsync("/api/boats", Ct)).StatusCode);

        nobody.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", "fw_aaaaaaaaaaaa_wrong");
        Assert.Equal(HttpStatusCode.Unauthorized, (await nobody.GetAsync("/api/boats", Ct)).StatusCode);

        var reader = await fleet.Service<FleetOperators>().MakeKeyAsync(RunningFleet.Operator, "reader", [KeyScope.Read], Ct);
        nobody.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", reader);
        Assert.Equal(HttpStatusCode.OK, (await nobody.GetAsync("/api/boats", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await nobody.PostAsJsonAsync("/api/records", new JsonObject(), Ct)).StatusCode);

        Assert.True(await fleet.Service<FleetOperators>().RevokeKeyAsync(KeySecret.IdOf(reader)!, Ct));
        Assert.Equal(HttpStatusCode.Unauthorized, (await nobody.GetAsync("/api/boats", Ct)).StatusCode);
    }

    [Fact]
    public async Task A_key_sees_its_own_operators_boats_only()
    {
        var operators = fleet.Service<FleetOperators>();
        await operators.OpenAsync("other-fleet", "Other Fleet", "Europe/Oslo", Ct);
        using var other = new HttpClient { BaseAddress = fleet.Http.BaseAddress };
        other.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await operators.MakeKeyAsync("other-fleet", "k", [KeyScope.Read], Ct));
        Assert.Equal("""{"items":[]}""", await other.GetStringAsync("/api/boats", Ct));
        Assert.Equal(HttpStatusCode.NotFound, (await other.GetAsync("/api/boats/tern", Ct)).StatusCode);
    }

    [Fact]
    public async Task The_database_holds_no_key_only_its_hash()
    {
        var key = await fleet.Service<FleetOperators>().MakeKeyAsync(RunningFleet.Operator, "k", [KeyScope.Read], Ct);
        await using var source = Npgsql.NpgsqlDataSource.Create(fleet.Database);
        await using var command = source.CreateCommand("select string_agg(data::text, '') from fleetwake.mt_doc_api_key");
        var stored = (string)(await command.ExecuteScalarAsync(Ct))!;
        Assert.DoesNotContain(key[16..], stored, StringComparison.Ordinal);
        Assert.Contains(KeySecret.Hash(key), stored, StringComparison.Ordinal);
    }

    private ReportStrike Strike(string boat, string at = "2026-03-02T10:00:00") => new(dock.At(at), boat, "single", "rock", "scuffed");

    private async Task<(HttpStatusCode Status, JsonObject Body)> PostAsync(ICommand record)
    {
        using var request = Request(record);
        using var response = await fleet.Http.SendAsync(request, Ct);
        return (response.StatusCode, (await response.Content.ReadFromJsonAsync<JsonObject>(Ct))!);
    }

    private static HttpRequestMessage Request(ICommand record) => new(HttpMethod.Post, $"/api/records/{BatchJson.Kind(record)}")
    {
        Content = JsonContent.Create(BatchJson.Write(record)),
    };

    private async Task<(HttpStatusCode Status, JsonObject Body)> PostJsonAsync(string path, string json)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(json, Encoding.UTF8, "application/json") };
        request.Headers.ExpectContinue = true; // a refusal by length comes before the body, and not into the middle of it
        using var response = await fleet.Http.SendAsync(request, Ct);
        var text = await response.Content.ReadAsStringAsync(Ct);
        return (response.StatusCode, text.Length > 0 && text[0] == '{' ? JsonNode.Parse(text)!.AsObject() : []);
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
