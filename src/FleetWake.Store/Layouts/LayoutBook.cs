using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using JasperFx;
using Marten;

namespace FleetWake.Store.Layouts;

/// <summary>Keeps the templates that operators saved, version by version, and what of a layout served last.</summary>
public sealed class LayoutBook(IDocumentStore store, TimeProvider time)
{
    /// <summary>The operator's own templates that are in force, by file name.</summary>
    public async Task<IReadOnlyDictionary<string, string>> OwnAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var chosen = await session.Query<OwnTemplate>().Where(t => t.InForce != null).ToListAsync(ct);
        var versions = await session.LoadManyAsync<OwnTemplateVersion>(ct, [.. chosen.Select(t => Key(t.Id, t.InForce!.Value))]);
        return versions.ToDictionary(v => v.File, v => v.Text, StringComparer.Ordinal);
    }

    /// <summary>Which versions are in force, by file name.</summary>
    public async Task<IReadOnlyList<OwnTemplate>> ChosenAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.Query<OwnTemplate>().OrderBy(t => t.Id).ToListAsync(ct);
    }

    /// <summary>Every version of a file, the newest first.</summary>
    public async Task<IReadOnlyList<OwnTemplateVersion>> VersionsAsync(string @operator, string file, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.Query<OwnTemplateVersion>().Where(v => v.File == file).OrderByDescending(v => v.Version).ToListAsync(ct);
    }

    /// <summary>How the layout of a digest fared; null when nothing is known of it.</summary>
    public async Task<LayoutState?> StateAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.LoadAsync<LayoutState>(digest, ct);
    }

    /// <summary>How the layouts of all digests fared.</summary>
    public async Task<IReadOnlyList<LayoutState>> StatesAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.Query<LayoutState>().OrderBy(s => s.Id).ToListAsync(ct);
    }

    /// <summary>
    /// Saves a new version of a file and puts it in force. False when somebody saved one since <paramref name="known"/>, the
    /// newest version that whoever writes had seen: theirs must not be lost unread.
    /// </summary>
    public Task<bool> SaveAsync(OperatorCard @operator, string person, string file, string text, int known, CancellationToken ct) =>
        Contention.SettleAsync(() => SaveOnceAsync(@operator, person, file, text, known, ct), ct);

    private async Task<bool> SaveOnceAsync(OperatorCard @operator, string person, string file, string text, int known, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        if ((await session.LoadAsync<OwnTemplate>(file, ct))?.Newest is var newest && (newest ?? 0) != known) return false;
        var version = known + 1;
        session.Insert(new OwnTemplateVersion(Key(file, version), file, version, text, person, time.GetUtcNow()));
        session.Store(new OwnTemplate(file, version, version));
        Tell(session, @operator, person, file, version, text);
        try
        {
            await session.SaveChangesAsync(ct);
            return true;
        }
        catch (DocumentAlreadyExistsException)
        {
            return false; // Two saved at the same moment; one of them has to look at the other's first.
        }
    }

    /// <summary>Puts an older version in force again, or, with none, the template that everybody has. False when there is no such version.</summary>
    public Task<bool> ChooseAsync(OperatorCard @operator, string person, string file, int? version, CancellationToken ct) =>
        Contention.SettleAsync(() => ChooseOnceAsync(@operator, person, file, version, ct), ct);

    private async Task<bool> ChooseOnceAsync(OperatorCard @operator, string person, string file, int? version, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        if (await session.LoadAsync<OwnTemplate>(file, ct) is not { } own) return false;
        var text = version is { } wanted ? (await session.LoadAsync<OwnTemplateVersion>(Key(file, wanted), ct))?.Text : null;
        if (version is not null && text is null) return false;
        if (own.InForce == version) return true;
        session.Store(own with { InForce = version });
        Tell(session, @operator, person, file, version, text);
        await session.SaveChangesAsync(ct);
        return true;
    }

    /// <summary>Keeps what served for the next time, and why a layout did not serve.</summary>
    public async Task KeepAsync(string @operator, string digest, IReadOnlyDictionary<string, string> served, string? why, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator);
        var before = await session.LoadAsync<LayoutState>(digest, ct) ?? new LayoutState(digest, new Dictionary<string, string>(), null, null);
        var good = before.LastGood.Concat(served).GroupBy(f => f.Key, StringComparer.Ordinal).ToDictionary(f => f.Key, f => f.Last().Value, StringComparer.Ordinal);
        if (before.Why == why && good.Count == before.LastGood.Count && good.All(f => before.LastGood[f.Key] == f.Value)) return;
        session.Store(new LayoutState(digest, good, why, why is null ? null : time.GetUtcNow()));
        await session.SaveChangesAsync(ct);
    }

    private void Tell(IDocumentSession session, OperatorCard card, string person, string file, int? version, string? text) => session.Events.Append(
        StreamName.Operator,
        new TemplateChosen(
            ProgramEntry.At(time.GetUtcNow(), card.Zone) with { By = person },
            file,
            version,
            text is null ? null : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))));

    private static string Key(string file, int version) => $"{file}@{version}";
}
