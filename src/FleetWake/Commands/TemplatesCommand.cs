using System.CommandLine;
using System.Net;
using System.Text;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Digests.Templates.Checks;
using FleetWake.Reports.Pictures;
using FleetWake.Settings;

namespace FleetWake.Commands;

internal static class TemplatesCommand
{
    public static Command Make() => new("templates", "Tries the templates of the mails, and copies the shipped ones to begin from. Needs no database.") { Check(), Copy() };

    private static Command Check()
    {
        var folder = new Argument<string?>("folder") { Description = "Folder of the templates; that of FLEETWAKE_TEMPLATES, else the shipped one, when left out.", Arity = ArgumentArity.ZeroOrOne };
        var output = new Option<string?>("--out") { Description = "Folder to write each digest to as it would look: .html, .txt and pictures." };
        var command = new Command("check", "Lints each template, lays out an invented fleet with it, and says what is wrong, where, and how to mend it; exit 1 when something is.") { folder, output };
        command.SetAction(parsed =>
        {
            var from = parsed.GetValue(folder) ?? FleetSettings.FromEnvironment().TemplateFolder;
            if (from is not null && !Directory.Exists(from)) throw new CommandException($"There is no folder \"{from}\".");
            var checks = TemplateCheck.All(new DigestRenderer(new PngRenderer(), from));
            foreach (var check in checks)
            {
                Console.WriteLine($"{check.Digest}: {(check.Faults.Count == 0 ? "well" : check.Faults.Count == 1 ? "1 thing to mend" : $"{check.Faults.Count} things to mend")}, {Encoding.UTF8.GetByteCount(check.Rendered.Html) / 1000} KB, {check.Rendered.Pictures.Count} pictures");
                foreach (var fault in check.Faults.Concat(check.Advice)) Console.WriteLine($"  {fault}{(fault.Mend.Length > 0 ? $"\n    {fault.Mend}" : "")}");
                if (parsed.GetValue(output) is { } to) Write(check, Path.GetFullPath(to));
            }

            var unasked = from is null ? [] : Unasked(from).ToList();
            foreach (var line in unasked) Console.WriteLine(line);
            if (parsed.GetValue(output) is { } shown) Console.WriteLine($"Open {Path.Combine(Path.GetFullPath(shown), "index.html")} to see them.");
            return checks.All(c => c.Faults.Count == 0) && unasked.Count == 0 ? 0 : Outcome.Wrong;
        });
        return command;
    }

    /// <summary>Files that no digest asks for, for a name that is mistyped changes nothing. Partials of one's own begin with a line.</summary>
    private static IEnumerable<string> Unasked(string folder) =>
        from file in Directory.GetFiles(folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)
        where (file.EndsWith(".liquid", StringComparison.Ordinal) && file[0] != '_') || file.EndsWith(".css", StringComparison.Ordinal)
        where !TemplateFiles.ShippedNames.Contains(file)
        select $"{file}: no digest asks for this file, so it changes nothing\n    Files that are asked for: {string.Join(", ", TemplateFiles.ShippedNames.Where(n => n[0] != '_'))}.";

    private static Command Copy()
    {
        var folder = new Argument<string>("folder") { Description = "Folder to copy to; files that are there already are left alone." };
        var command = new Command("copy", "Copies the shipped templates into a folder, to be changed there: name it in FLEETWAKE_TEMPLATES. Keep only what you change; the rest follows each update.") { folder };
        command.SetAction(parsed =>
        {
            var to = Directory.CreateDirectory(parsed.GetRequiredValue(folder)).FullName;
            foreach (var file in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "reports-templates")).Order(StringComparer.Ordinal))
            {
                var target = Path.Combine(to, Path.GetFileName(file));
                var there = File.Exists(target);
                if (!there) File.Copy(file, target);
                Console.WriteLine($"{Path.GetFileName(file)}: {(there ? "there already, left alone" : "copied")}");
            }

            return 0;
        });
        return command;
    }

    private static void Write(CheckedDigest check, string folder)
    {
        Directory.CreateDirectory(folder);
        var html = check.Rendered.Html;
        foreach (var picture in check.Rendered.Pictures)
        {
            var name = $"{check.Digest}-{picture.FileName}";
            File.WriteAllBytes(Path.Combine(folder, name), picture.Png);
            html = html.Replace($"cid:{picture.ContentId}", name, StringComparison.Ordinal);
        }

        File.WriteAllText(Path.Combine(folder, $"{check.Digest}.html"), html);
        File.WriteAllText(Path.Combine(folder, $"{check.Digest}.txt"), check.Rendered.Text);
        foreach (var file in check.Rendered.Attachments) File.WriteAllBytes(Path.Combine(folder, $"{check.Digest}-{file.FileName}"), file.Bytes);
        var pages = Directory.GetFiles(folder, "*.html").Select(f => Path.GetFileNameWithoutExtension(f)).Where(f => f != "index").Order(StringComparer.Ordinal);
        var links = string.Concat(pages.Select(p => $"<li><a href=\"{WebUtility.HtmlEncode(p)}.html\">{WebUtility.HtmlEncode(p)}</a>, <a href=\"{WebUtility.HtmlEncode(p)}.txt\">as text</a></li>"));
        File.WriteAllText(Path.Combine(folder, "index.html"), $"<!DOCTYPE html><meta charset=\"utf-8\"><title>Digests of an invented fleet</title><ul>{links}</ul>");
    }
}
