using System.Text.Json;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Mail;

/// <summary>Where an operator's alerts are handed to by the web: set, tried, changed and ended by an administrator.</summary>
internal sealed class HookDesk(FleetOperators operators, AlertHooks hooks, HookPost post, TimeProvider time)
{
    private const int Shown = 20;

    public const string Path = "/office/mail/hook";

    public async Task<IResult> ShowAsync(HttpContext http, FormState state)
    {
        var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
        return PageAnswer.Of<HookPage>(
            http, new { Scene = scene, Host = (await hooks.FindAsync(scene.Operator.Id, ct))?.ToString(), Handed = await hooks.ListAsync(scene.Operator.Id, Shown, ct), State = state }, state.Status);
    }

    /// <summary>The secret is shown in the answer to the form, against the custom of a redirect: it is seen once, and no address keeps it.</summary>
    public async Task<IResult> SetAsync(HttpContext http, IFormCollection form)
    {
        var (scene, typed, ct) = (await Scene.OfAsync(http, operators), form["address"].ToString().Trim(), http.RequestAborted);
        if ((HookPost.WhyNot(typed) ?? await post.WhyNotThereAsync(new Uri(typed), ct)) is { } why)
            return await ShowAsync(http, FormState.Of("hook", form, [new Refusal("/address", "not_taken", why)]));
        return Secret(http, scene, new Uri(typed).Host, await hooks.SetAsync(scene.Operator, new Uri(typed), scene.Person, ct));
    }

    public async Task<IResult> RenewAsync(HttpContext http)
    {
        var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
        return await hooks.FindAsync(scene.Operator.Id, ct) is { } hook && await hooks.RenewAsync(scene.Operator, scene.Person, ct) is { } secret
            ? Secret(http, scene, $"{hook}", secret)
            : Results.LocalRedirect($"{Path}?done=none");
    }

    public async Task<IResult> TestAsync(HttpContext http)
    {
        var (card, now) = ((await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!, time.GetUtcNow());
        var id = $"test-{now:yyyyMMddHHmmssfff}";
        var json = JsonSerializer.Serialize(
            new { Operator = card.Id, Alert = id, Test = true, Subject = $"{card.Name}: a test, nothing has happened", Causes = Array.Empty<object>(), Caution = "A decision aid: the owner's manual, local rules and a licensed technician win." },
            LogbookJson.Options);
        return Results.LocalRedirect($"{Path}?done={(await hooks.TestAsync(card, id, json, http.RequestAborted) ? "tested" : "none")}");
    }

    public async Task<IResult> EndAsync(HttpContext http)
    {
        var card = (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!;
        return Results.LocalRedirect($"{Path}?done={(await hooks.EndAsync(card, http.User.PersonOf(), http.RequestAborted) ? "off" : "none")}");
    }

    private static IResult Secret(HttpContext http, Scene scene, string host, string secret) => PageAnswer.Of<HookSecretPage>(http, new { Scene = scene, Host = host, Secret = secret });
}
