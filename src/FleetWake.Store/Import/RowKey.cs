using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>
/// What a row is called, so that importing it again is a repeat: the key that its sheet gives it, else what it is about
/// and when. Its entry id follows from operator, kind and key.
/// </summary>
public static class RowKey
{
    /// <summary>The member of a stamp that names the entry which a record replaces.</summary>
    internal const string AmendsMember = "amends";

    // Drawn once for this purpose; another one would give every row another id.
    private static readonly byte[] Namespace = new Guid("7c0f1b0a-6f0e-4f43-9c53-3a4d1b7e2d90").ToByteArray(bigEndian: true);

    // What tells two records of one kind and one moment apart.
    private static readonly string[] Subjects =
        ["boat", "engine", "prop", "part", "position", "dock", "rule", "person", "device", "what", "item", "for", "claim", "retracts"];

    /// <summary>
    /// Where the columns stand whose cells make up the key of a row that has none: in the order of the kind's own fields, so
    /// that a sheet may be reordered. New fields come after those that are there, or every row would get another id.
    /// </summary>
    internal static int[] SubjectsOf(SheetHead head, RecordKind kind)
    {
        var places = Shape.Of(kind.CommandType).Index().ToDictionary(f => f.Item.Name, f => f.Index, StringComparer.Ordinal);
        return
        [
            .. head.Columns.Index().Where(c => c.Item is { Path.Count: 0 } column && Subjects.Contains(column.Field.Name, StringComparer.Ordinal))
                .OrderBy(c => places[c.Item!.Field.Name]).Select(c => c.Index),
        ];
    }

    /// <summary>Entry id of a row: a UUID of version 5 (RFC 9562).</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="kind">The kind of record.</param>
    /// <param name="key">The row's key.</param>
    [SuppressMessage("Security", "CA5350", Justification = "Version 5 is by SHA-1; nothing is kept secret or proven by it.")]
    public static Guid EntryId(string @operator, string kind, string key)
    {
        var name = Encoding.UTF8.GetBytes($"{@operator}\n{kind}\n{key}");
        var bytes = SHA1.HashData([.. Namespace, .. name]).AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x50);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
