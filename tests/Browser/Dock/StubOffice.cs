using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>Stands in for the dock's routes of the server; records go to the real recorder through the API.</summary>
internal sealed class StubOffice(RunningFleet fleet)
{
    private int devices;

    public HashSet<string> Revoked { get; } = [];

    public List<string> Notes { get; } = [];

    public async Task StandInAsync(IBrowserContext window) => await window.RouteAsync("**/dock/api/**", AnswerAsync);

    private async Task AnswerAsync(IRoute route)
    {
        var path = new Uri(route.Request.Url).AbsolutePath["/dock/api".Length..];
        var body = route.Request.PostData is { } text ? JsonNode.Parse(text) : null;
        var device = route.Request.Headers.TryGetValue("authorization", out var bearer) ? bearer.Split('_')[1] : "";
        if (Revoked.Contains(device) && path != "/records") { await Json(route, 401, """{"type":"urn:fleetwake:problem:device-revoked","detail":"revoked"}"""); return; }
        switch (path)
        {
            case "/enrol":
                var id = $"phone{++devices}";
                await Json(route, 200, $$"""{"device":"{{id}}","dock":"old-mole","dockName":"Old Mole","zone":"{{RunningFleet.Zone}}","operator":"skerry-bay","operatorName":"Skerry Bay Hire","token":"fwd_{{id}}_x","tokenUntil":"2027-02-28T00:00:00Z","rotateAfter":"2027-01-28T00:00:00Z"}""");
                break;
            case "/today":
                await Json(route, 200, Today());
                break;
            case "/records":
                if (Revoked.Contains(device))
                {
                    await Json(route, 200, new JsonObject { ["results"] = new JsonArray([.. body!["records"]!.AsArray().Select(_ => (JsonNode)new JsonObject { ["outcome"] = "kept_back" })]) }.ToJsonString());
                    break;
                }

                using (var response = await fleet.Http.PostAsync("/api/records", new StringContent(body!.ToJsonString(), Encoding.UTF8, "application/json")))
                    await Json(route, (int)response.StatusCode, await response.Content.ReadAsStringAsync());
                break;
            case "/sign":
                await (body!["pin"]!.GetValue<string>() == "123456" ? Json(route, 200, $$"""{"person":"{{body["person"]}}","until":"2036-12-01T00:00:00Z"}""") : Json(route, 403, """{"type":"urn:fleetwake:problem:pin-wrong","detail":"wrong","triesLeft":4}"""));
                break;
            case var note when note.EndsWith("/note", StringComparison.Ordinal):
                Notes.Add(body!["text"]!.GetValue<string>());
                await Json(route, 200, "{}");
                break;
            default:
                await Json(route, 404, "{}");
                break;
        }
    }

    private static Task Json(IRoute route, int status, string body) => route.FulfillAsync(new RouteFulfillOptions { Status = status, ContentType = "application/json", Body = body });

    private static string Position(string position, string boat) => $$"""
        {"position":"{{position}}","engine":{"engine":"e-{{boat}}","model":"Skerry 50","ratedBand":{"low":5000,"high":6000},"gearRatio":2.08,"torque":{"value":25,"unit":"pound_force_foot","newtonMetres":33.9,"poundForceFeet":25},
         "fastening":{"kind":"castle_nut_cotter_pin","torqueRange":{"low":{"value":25,"unit":"pound_force_foot","newtonMetres":33.9,"poundForceFeet":25},"high":{"value":30,"unit":"pound_force_foot","newtonMetres":40.7,"poundForceFeet":30} },"slots":2,"retorque":true},"tachometerStep":10},
         "hours":{"value":412.5,"on":"2026-11-20"},"mounting":{"mounting":"m-1","prop":"p-{{boat}}","diameterInches":11.5,"pitchInches":13,"blades":3,"material":"aluminium","rotation":"right","fittedOn":"2026-09-01"},
         "standing":{"sign":"●","word":"in band","sentence":"5,650 RPM at reference air, 350 below the top of its band.","marginRpm":350,"edge":"top","outside":false,"driftSentence":"Drift 0.6 % in 100 h (0.2 to 1.0).","exitSentence":"Leaves its band in about 900 h."},
         "reference":{"temperatureC":25,"pressureHPa":990,"relativeHumidity":0,"gain":0.24,"gainSd":0.07,"lowestFactor":0.93,"highestFactor":1.07,"missing":{"pressureHPa":1000,"relativeHumidity":0.6} },
         "lastTrial":{"on":"2026-10-12","throttle":"wide_open","rpm":5650,"people":2,"fuelPercent":60,"trimDegrees":3},
         "openStrikes":[],"fits":[{"prop":"sp-12","size":"11.5 x 13 in","dock":"old-mole","here":true,"answer":"fits","why":""},{"prop":"sp-14","size":"11.5 x 14 in","dock":"new-mole","here":false,"answer":"not_stated","why":"its hub kit is not stated"}]}
        """;

    private static string Today()
    {
        var now = DateTimeOffset.UtcNow.ToString("o");
        string Boat(string id, string name, string hire, params string[] positions) => $$"""
            {"boat":"{{id}}","name":"{{name}}","dock":"old-mole","water":"salt","hire":{{hire}},"attention":[],"due":[{"what":"Inspection of prop and shaft","due":"2026-11-15","why":"Six months since the last.","overdue":true,"ruleId":"six-monthly","kind":"six_monthly_inspection","position":"{{positions[0]}}"}],
             "positions":[{{string.Join(",", positions.Select(p => Position(p, id)))}}]}
            """;
        return $$"""
            {"madeAt":"{{now}}","now":"{{now}}","operator":{"id":"skerry-bay","name":"Skerry Bay Hire","zone":"{{RunningFleet.Zone}}" },"dock":{"id":"old-mole","name":"Old Mole","zone":"{{RunningFleet.Zone}}","water":"salt","bottom":"rock"},
             "staleAfterHours":12,"photoLimits":{"bytes":2000000,"pixels":40000000},"people":[{"person":"mech-1","name":"Ana","role":"mechanic","hasPin":true},{"person":"mech-2","name":"Bo","role":"operator","hasPin":true}],
             "policy":{"rules":[],"hire":{"rows":[]} },
             "boats":[{{Boat("tern", "Tern", """{"word":"in_hire","reasons":[]}""", "single")}},{{Boat("gannet", "Gannet", """{"word":"out","reasons":[{"sentence":"Strike on rock (bent) on 2026-11-28.","releasedBy":"An inspection dated after the strike with the verdict fit.","word":"out"}]}""", "port", "starboard")}},{{Boat("linnet", "Linnet", """{"word":"look_first","reasons":[{"sentence":"Strike on sand (scuffed) on 2026-11-29.","releasedBy":"A short look that sees no damage, recorded.","word":"look_first"}]}""", "single")}}],
             "others":[{"boat":"petrel","name":"Petrel","dock":"new-mole"}],"spares":[{"prop":"sp-12","size":"11.5 x 13 in","material":"aluminium","blades":3,"rotation":"right","dock":"old-mole","standing":"spare"}],
             "parts":[{"part":"pin-3","kind":"cotter_pin","name":"Cotter pin 3 mm","atDock":12}]}
            """;
    }
}
