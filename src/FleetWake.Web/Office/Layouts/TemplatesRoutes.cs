using System.Globalization;
using FleetWake.Logbook.People;
using FleetWake.Reports.Digests.Samples;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Digests.Templates.Checks;
using FleetWake.Store.Layouts;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Layouts;

/// <summary>How the mails are laid out: looked at before they go, and changed without a programmer.</summary>
internal static class TemplatesRoutes
{
    public static void MapTemplatesPages(this IEndpointRouteBuilder office)
    {
        office.MapGet("templates", ListAsync).NeedsTo(Verb.Read, Matter.Reports);
        office.MapGet("templates/{file}", (string file, HttpContext http, Shown shown) => shown.EditAsync(http, file, null, [], [])).NeedsTo(Verb.Read, Matter.Reports);
        office.MapGet("templates/look/{digest}", LookAsync).NeedsTo(Verb.Read, Matter.Reports);
        office.MapPost("templates/look", TryAsync).NeedsTo(Verb.Decide, Matter.Reports);
        office.MapPost("templates/{file}", SaveAsync).NeedsTo(Verb.Decide, Matter.Reports);
        office.MapPost("templates/{file}/choose", ChooseAsync).NeedsTo(Verb.Decide, Matter.Reports);
    }

    private static async Task<IResult> ListAsync(HttpContext http, FleetOperators operators, LayoutBook layouts)
    {
        var scene = await Scene.OfAsync(http, operators);
        var (own, states) = (await layouts.ChosenAsync(scene.Operator.Id, http.RequestAborted), await layouts.StatesAsync(scene.Operator.Id, http.RequestAborted));
        return PageAnswer.Of<TemplatesPage>(http, new { Scene = scene, Own = own, States = states });
    }

    /// <summary>A digest of the invented fleet as it would go out now.</summary>
    private static async Task<IResult> LookAsync(string digest, HttpContext http, DigestRenderer renderer, LayoutBook layouts)
    {
        if (SampleDigests.Of(digest) is not { } sample) return Results.NotFound();
        var own = await layouts.OwnAsync(http.User.OperatorOf(), http.RequestAborted);
        return TemplateLook.Of(http, renderer.Render(sample, new OperatorLayout(own, OperatorLayout.None.LastGood)), http.Request.Query["show"].ToString());
    }

    /// <summary>The same with a text that is not saved.</summary>
    private static async Task<IResult> TryAsync(HttpContext http, DigestRenderer renderer, LayoutBook layouts)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (file, text) = (form["file"].ToString(), Typed(form));
        if (!TemplateFiles.ShippedNames.Contains(file) || text.Length > TemplateFiles.MostCharacters || SampleDigests.Of(form["digest"].ToString()) is not { } sample) return Results.NotFound();
        var own = new Dictionary<string, string>(await layouts.OwnAsync(http.User.OperatorOf(), http.RequestAborted)) { [file] = text };
        return TemplateLook.Of(http, renderer.Render(sample, new OperatorLayout(own, OperatorLayout.None.LastGood)), form["show"].ToString());
    }

    private static async Task<IResult> SaveAsync(string file, HttpContext http, Shown shown, DigestRenderer renderer, FleetOperators operators, LayoutBook layouts)
    {
        if (!TemplateFiles.ShippedNames.Contains(file)) return await NotHereAsync(http, operators);
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (text, known, ct) = (Typed(form), int.TryParse(form["known"], CultureInfo.InvariantCulture, out var n) ? n : 0, http.RequestAborted);
        var card = (await operators.FindAsync(http.User.OperatorOf(), ct))!;
        if (text.Length is 0 or > TemplateFiles.MostCharacters) return await shown.EditAsync(http, file, text, [], [PageTexts.English[text.Length == 0 ? "templates.empty" : "templates.too-long"]]);
        var own = new Dictionary<string, string>(await layouts.OwnAsync(card.Id, ct)) { [file] = text };
        var layout = new OperatorLayout(own, OperatorLayout.None.LastGood);
        List<TemplateFault> faults = [.. Shown.DigestsOf(file).SelectMany(d => TemplateCheck.Of(renderer, d, layout).Faults).Distinct()];
        if (faults.Count > 0) return await shown.EditAsync(http, file, text, faults, []);
        return await layouts.SaveAsync(card, http.User.PersonOf()!, file, text, known, ct)
            ? Results.Redirect($"/office/templates/{file}?done=saved")
            : await shown.EditAsync(http, file, text, [], [PageTexts.English["templates.changed-meanwhile"]]);
    }

    private static async Task<IResult> ChooseAsync(string file, HttpContext http, Shown shown, DigestRenderer renderer, FleetOperators operators, LayoutBook layouts)
    {
        var (form, ct) = (await http.Request.ReadFormAsync(http.RequestAborted), http.RequestAborted);
        var card = (await operators.FindAsync(http.User.OperatorOf(), ct))!;
        int? version = int.TryParse(form["version"], CultureInfo.InvariantCulture, out var n) ? n : null;

        // A version that served once may name what a digest no longer has.
        if (version is { } wanted && (await layouts.VersionsAsync(card.Id, file, ct)).FirstOrDefault(v => v.Version == wanted) is { } kept)
        {
            var own = new Dictionary<string, string>(await layouts.OwnAsync(card.Id, ct)) { [file] = kept.Text };
            List<TemplateFault> faults = [.. Shown.DigestsOf(file).SelectMany(d => TemplateCheck.Of(renderer, d, new OperatorLayout(own, OperatorLayout.None.LastGood)).Faults).Distinct()];
            if (faults.Count > 0) return await shown.EditAsync(http, file, kept.Text, faults, []);
        }

        return await layouts.ChooseAsync(card, http.User.PersonOf()!, file, version, ct) ? Results.Redirect($"/office/templates/{file}?done={(version is null ? "back" : "chosen")}") : await NotHereAsync(http, operators);
    }

    // Browsers send line breaks of a text area as CR LF (HTML, form submission).
    private static string Typed(IFormCollection form) => form["text"].ToString().ReplaceLineEndings("\n");

    private static async Task<IResult> NotHereAsync(HttpContext http, FleetOperators operators) =>
        PageAnswer.Of<NotHerePage>(http, new { Scene = await Scene.OfAsync(http, operators), Sentence = PageTexts.English["templates.not-here"] }, StatusCodes.Status404NotFound);

    /// <summary>Shows the page of a file.</summary>
    internal sealed class Shown(FleetOperators operators, LayoutBook layouts, FleetPeople people, DigestRenderer renderer)
    {
        /// <summary>The digests that a file is part of: all of them, of a partial or the styles.</summary>
        public static IReadOnlyList<Reports.Digests.DigestDraft> DigestsOf(string file) =>
            SampleDigests.All.Where(d => file == DigestRenderer.HtmlTemplate(d.Digest) || file == DigestRenderer.TextTemplate(d.Digest)).ToList() is { Count: > 0 } one ? one : SampleDigests.All;

        public async Task<IResult> EditAsync(HttpContext http, string file, string? typed, IReadOnlyList<TemplateFault> faults, IReadOnlyList<string> wrong)
        {
            var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
            if (!TemplateFiles.ShippedNames.Contains(file)) return await NotHereAsync(http, operators);
            var versions = await layouts.VersionsAsync(scene.Operator.Id, file, ct);
            var chosen = (await layouts.ChosenAsync(scene.Operator.Id, ct)).FirstOrDefault(c => c.Id == file);
            int? looked = int.TryParse(http.Request.Query["version"], CultureInfo.InvariantCulture, out var n) ? n : chosen?.InForce;
            var text = typed ?? versions.FirstOrDefault(v => v.Version == looked)?.Text ?? renderer.Files.Read(file) ?? "";

            // The frame below shows the mail; it runs nothing and reaches nothing, see TemplateLook.
            http.Response.Headers.ContentSecurityPolicy = $"{http.Response.Headers.ContentSecurityPolicy}; frame-src 'self'";
            return PageAnswer.Of<TemplatePage>(
                http,
                new
                {
                    Scene = scene,
                    File = file,
                    Text = text,
                    Versions = versions,
                    InForce = chosen?.InForce,
                    Digests = DigestsOf(file).Select(d => d.Digest).ToList(),
                    Faults = faults,
                    Wrong = wrong,
                    Names = await people.NamesAsync(scene.Operator.Id, ct),
                    May = http.User.May(Verb.Decide, Matter.Reports),
                },
                faults.Count + wrong.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK);
        }
    }
}
