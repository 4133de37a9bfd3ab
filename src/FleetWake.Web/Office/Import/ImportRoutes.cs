using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Import;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Import;

/// <summary>One table at a time into the record: sent, looked at, then recorded in steps.</summary>
internal static class ImportRoutes
{
    /// <summary>A step of recording ends after so long, so that a page says how far it is.</summary>
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(3);

    /// <summary>Room for what is around a table in its form, and for a table that is a little too large to be told so [bytes].</summary>
    private const int Room = 4 * 1024 * 1024;

    public static void MapImportPages(this IEndpointRouteBuilder office)
    {
        office.MapGet("import", (HttpContext http, Shown shown) => shown.FormAsync(http, FormState.None)).NeedsTo(Verb.Read, Matter.Import);
        office.MapGet("import/{kind}.csv", Template).NeedsTo(Verb.Read, Matter.Import);
        office.MapPost("import", SendAsync).NeedsTo(Verb.Decide, Matter.Import)
            .WithMetadata(new RequestSizeLimitAttribute(ImportDrafts.MostBytes + Room));
        office.MapGet("import/{table}", (string table, HttpContext http, Shown shown) => shown.TableAsync(http, IdOf(table))).NeedsTo(Verb.Decide, Matter.Import);
        office.MapPost("import/{table}", GoOnAsync).NeedsTo(Verb.Decide, Matter.Import);
    }

    /// <summary>An empty table with every column, as the command writes it.</summary>
    private static IResult Template(string kind) => RecordKind.Find(kind) is { } known
        ? Results.File(Templates.Empty(known), "text/csv; charset=utf-8", $"{known.Name}.csv")
        : Results.NotFound();

    private static async Task<IResult> SendAsync(IFormCollection form, HttpContext http, Shown shown, TableImport import)
    {
        var typed = new FormReading(form);
        var (file, name) = (form.Files.GetFile("table"), Path.GetFileName(form.Files.GetFile("table")?.FileName ?? ""));
        var named = typed.Text("kind") ?? Path.GetFileNameWithoutExtension(name).ToLowerInvariant();
        var kind = RecordKind.Find(named);
        List<Refusal> refusals = [];
        if (file is { Length: 0, FileName.Length: > 0 }) refusals.Add(new Refusal("/table", "empty", PageTexts.English["import.empty-file"]));
        else if (file is null or { Length: 0 }) refusals.Add(new Refusal("/table", "missing", PageTexts.English["import.no-file"]));
        else if (file.Length > ImportDrafts.MostBytes) refusals.Add(new Refusal("/table", "too_large", PageTexts.English.With("import.too-large", ("mb", ImportDrafts.MostBytes / 1024 / 1024))));
        if (kind is not null && !ImportKinds.Allows(http.User, kind)) refusals.Add(new Refusal("/kind", "not_here", PageTexts.English.With("import.not-by-you", ("kind", kind.Name))));
        if (kind is null) refusals.Add(new Refusal("/kind", "no_kind", PageTexts.English["import.no-kind"]));
        if (refusals.Count == 0)
        {
            using var bytes = new MemoryStream((int)file!.Length);
            await file.CopyToAsync(bytes, http.RequestAborted);
            if (IsNoText(bytes.GetBuffer().AsSpan(0, (int)bytes.Length)))
            {
                refusals.Add(new Refusal("/table", "no_text", PageTexts.English["import.no-text"]));
                return await shown.FormAsync(http, FormState.Of("table", form, refusals));
            }

            var (draft, complaints) = await import.OpenAsync(
                http.User.OperatorOf(), http.User.PersonOf()!, name, kind!, new RowDefaults(typed.Text("by"), typed.Text("zone")), bytes.ToArray(), http.RequestAborted);
            if (draft is not null) return Results.Redirect($"/office/import/{draft.Id}");
            refusals.AddRange(complaints.Select(c => new Refusal("/table", "not_readable", c)));
        }

        return await shown.FormAsync(http, FormState.Of("table", form, refusals));
    }

    private static async Task<IResult> GoOnAsync(string table, IFormCollection form, HttpContext http, Shown shown, TableImport import) =>
        await import.GoOnAsync(http.User.OperatorOf(), http.User.PersonOf()!, IdOf(table), Step, (kind, command) => ImportKinds.Allows(http.User, kind, command), http.RequestAborted) is null
            ? await shown.TableAsync(http, IdOf(table))
            : Results.Redirect($"/office/import/{IdOf(table)}");

    /// <summary>Pictures, archives and office documents begin with signs that no table begins with.</summary>
    private static bool IsNoText(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G']) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])
        || bytes.StartsWith("GIF8"u8) || bytes.StartsWith("%PDF"u8) || bytes.StartsWith("PK\u0003\u0004"u8) || bytes.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]);

    // What is no id is the id of nothing.
    private static Guid IdOf(string table) => Guid.TryParse(table, out var id) ? id : Guid.Empty;

    /// <summary>Shows the pages.</summary>
    internal sealed class Shown(FleetOperators operators, TableImport import)
    {
        public async Task<IResult> FormAsync(HttpContext http, FormState state)
        {
            http.Features.Set(state with { BareIds = true });
            return PageAnswer.Of<ImportPage>(http, new { Scene = await Scene.OfAsync(http, operators), State = state }, state.Status);
        }

        public async Task<IResult> TableAsync(HttpContext http, Guid table)
        {
            var (tenant, person, ct) = (http.User.OperatorOf(), http.User.PersonOf()!, http.RequestAborted);
            var scene = await Scene.OfAsync(http, operators);
            if (await import.FindAsync(tenant, person, table, ct) is not { } draft)
                return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English["import.gone"] }, StatusCodes.Status404NotFound);
            return draft.Totals.Rows == 0 && await import.LookAsync(tenant, person, table, (kind, command) => ImportKinds.Allows(http.User, kind, command), ct) is { } preview
                ? PageAnswer.Of<PreviewPage>(http, new { Scene = scene, Preview = preview })
                : PageAnswer.Of<ProgressPage>(http, new { Scene = scene, Draft = draft });
        }
    }
}
