using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using FleetWake.Logbook.People;
using FleetWake.Store.Devices;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.Playwright;

namespace FleetWake.Browser.Tests.Office;

/// <summary>The office gives a phone to a dock, ends it, and helps somebody to a PIN.</summary>
public sealed class DevicesPageTests(ChromiumFixture chromium, PostgresFixture postgres) : IAsyncLifetime
{
    private BrowsedFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await BrowsedFleet.StartAsync(chromium, postgres, "devices_page");
        await fleet.Fleet.SendAsync(new DockRecords().Outfit("tern", "Tern"), Ct);
        await RunningFleet.UntilAsync("the boat", async () => (await fleet.Fleet.Http.GetAsync("/api/boats/tern", Ct)).IsSuccessStatusCode, Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task An_operator_makes_a_code_a_phone_uses_it_and_is_revoked()
    {
        var page = await (await fleet.SignedInAsync(Role.Operator)).NewPageAsync();
        await page.GotoAsync("/office/devices");
        await Accessible.HoldsAsync(page);
        await page.GetByLabel("Dock", new PageGetByLabelOptions { Exact = true }).SelectOptionAsync("old-mole");
        await page.GetByLabel("Name").FillAsync("by the fuel pump");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make a code" }).ClickAsync();

        Assert.Equal("Enrol “by the fuel pump”, old-mole", await page.InnerTextAsync("h1"));
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "QR code of the link that enrols by the fuel pump" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[data-until]")).ToHaveTextAsync("Good for 10 more minutes.");
        var link = await page.GetByLabel("The link", new PageGetByLabelOptions { Exact = true }).InputValueAsync();
        Assert.StartsWith(fleet.Url + "/dock/enrol#", link, StringComparison.Ordinal);
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "device-code");

        Assert.Equal(HttpStatusCode.OK, await EnrolAsync(link.Split('#')[1]));
        await page.GotoAsync("/office/devices");
        await Assertions.Expect(page.Locator(".phones")).ToContainTextAsync("by the fuel pump, old-mole");
        await page.Locator(".phones summary").ClickAsync();
        await Assertions.Expect(page.GetByText("Entries that it still carries are taken")).ToBeVisibleAsync();
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "devices");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Revoke by the fuel pump" }).ClickAsync();
        await Assertions.Expect(page.Locator(".phones .state")).ToContainTextAsync("Revoked");
        Assert.NotNull(Assert.Single(await fleet.Fleet.Service<FleetDevices>().OfAsync(RunningFleet.Operator, Ct)).RevokedAt);
    }

    [Fact]
    public async Task A_form_that_lacks_something_comes_back_with_what_was_typed()
    {
        var page = await (await fleet.SignedInAsync(Role.Operator)).NewPageAsync();
        await page.GotoAsync("/office/devices");
        await page.EvaluateAsync("document.querySelectorAll('form').forEach(f => f.noValidate = true)");
        await page.GetByLabel("Name").FillAsync("   ");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make a code" }).ClickAsync();
        await Assertions.Expect(page.Locator("#wrong-name")).ToHaveTextAsync("missing: give a name");
        await Accessible.HoldsAsync(page);
    }

    [Fact]
    public async Task A_start_code_for_a_PIN_is_shown_once()
    {
        var window = await fleet.SignedInAsync(Role.Operator);
        var page = await window.NewPageAsync();
        await page.GotoAsync("/office/devices");
        await page.GetByLabel("Person").SelectOptionAsync("some-operator");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Make a start code" }).ClickAsync();
        Assert.Equal("Start code for Some Operator", await page.InnerTextAsync("h1"));
        Assert.Matches(@"^\d{4} \d{4}$", (await page.InnerTextAsync(".start")).Trim());
        await Accessible.HoldsAsync(page);
        await Looks.AtAsync(page, "pin-code");
    }

    [Fact]
    public async Task A_mechanic_has_no_say_here()
    {
        var page = await (await fleet.SignedInAsync(Role.Mechanic)).NewPageAsync();
        Assert.Equal(403, (await page.GotoAsync("/office/devices"))!.Status);
    }

    private async Task<HttpStatusCode> EnrolAsync(string code)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var point = key.ExportParameters(includePrivateParameters: false).Q;
        string Text(byte[] bytes) => System.Buffers.Text.Base64Url.EncodeToString(bytes);
        using var http = new HttpClient { BaseAddress = new Uri(fleet.Url) };
        using var answer = await http.PostAsJsonAsync(
            "/dock/api/enrol", new JsonObject { ["code"] = code, ["name"] = "by the fuel pump", ["publicKey"] = new JsonObject { ["kty"] = "EC", ["crv"] = "P-256", ["x"] = Text(point.X!), ["y"] = Text(point.Y!) } }, Ct);
        return answer.StatusCode;
    }
}
