using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Entries;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office;

/// <summary>Stamps of what is done on an office page, and times as the office reads them.</summary>
internal static class OfficeStamp
{
    /// <summary>The stamp of somebody at an office page, now.</summary>
    /// <param name="scene">Who.</param>
    /// <param name="now">The server's clock.</param>
    /// <param name="of">What makes the id, for what can be done once: done again, it is a repeat. A new id when left out.</param>
    public static Stamp Of(Scene scene, DateTimeOffset now, string? of = null) =>
        Stamp.At(of is null ? Guid.CreateVersion7(now) : new Guid(SHA256.HashData(Encoding.UTF8.GetBytes(of)).AsSpan(0, 16)), scene.Person, now, scene.Operator.Zone);

    /// <summary>A moment by the clock of the office.</summary>
    public static string Clock(this Scene scene, DateTimeOffset moment) => scene.Measures.Moment(moment, scene.Operator.Zone);
}
