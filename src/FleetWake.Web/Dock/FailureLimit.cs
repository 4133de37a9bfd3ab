using System.Globalization;
using System.Threading.RateLimiting;
using FleetWake.Web.Api;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Dock;

/// <summary>
/// Counts failures of an address, and hears no more of it when they are many. Only failures count: a dock whose phones share
/// one address may enrol them all in one morning.
/// </summary>
internal sealed class FailureLimit : IDisposable
{
    /// <summary>Failures that an address may make within <see cref="Within"/>.</summary>
    public const int MostFailures = 20;

    /// <summary>After this long they are forgotten.</summary>
    public static readonly TimeSpan Within = TimeSpan.FromMinutes(5);

    private readonly PartitionedRateLimiter<string> failures = PartitionedRateLimiter.Create<string, string>(address =>
        RateLimitPartition.GetFixedWindowLimiter(address, _ => new FixedWindowRateLimiterOptions { PermitLimit = MostFailures, Window = Within, QueueLimit = 0 }));

    /// <summary>A 429 when the caller failed too often; null when it may try.</summary>
    public IResult? Refusal(HttpContext http)
    {
        using var lease = failures.AttemptAcquire(AddressOf(http), permitCount: 0);
        if (lease.IsAcquired) return null;
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var after) && after > TimeSpan.Zero ? after : Within;
        http.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
        return Problems.Make(StatusCodes.Status429TooManyRequests, "too-many-attempts", $"Too many attempts from this address failed. Wait {Math.Ceiling(wait.TotalMinutes)} min, then ask the office for a new code.", []);
    }

    /// <summary>Notes that the caller failed.</summary>
    public void Failed(HttpContext http) => failures.AttemptAcquire(AddressOf(http)).Dispose();

    /// <inheritdoc/>
    public void Dispose() => failures.Dispose();

    private static string AddressOf(HttpContext http) => http.Connection.RemoteIpAddress?.ToString() ?? "";
}
