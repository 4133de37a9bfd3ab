using System.Security.Cryptography;

namespace FleetWake.Store.Servers.Download;

/// <summary>Fetches a package's file and takes it only when it is the one that was published, to the last byte.</summary>
internal static class PackageDownload
{
    private static readonly TimeSpan ConnectPatience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(20);

    public static async Task FetchAsync(PublishedPackage package, Uri registry, string file, TimeProvider time, CancellationToken ct)
    {
        // A slow line may take minutes; a line on which nothing comes any more is dead.
        using var silence = new CancellationTokenSource(Silence, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, silence.Token);
        try
        {
            await FetchAsync(package, package.At(registry), file, () => silence.CancelAfter(Silence), either.Token);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            throw new DownloadException($"{registry.Host} sent nothing for {Silence.TotalSeconds} seconds");
        }
        catch (HttpRequestException failed)
        {
            throw new DownloadException($"{registry.Host} cannot be reached ({failed.Message.TrimEnd('.')})");
        }
        catch (HttpIOException)
        {
            throw new DownloadException($"the download from {registry.Host} broke off");
        }
    }

    private static async Task FetchAsync(PublishedPackage package, Uri address, string file, Action heard, CancellationToken ct)
    {
        using var http = new HttpClient(new SocketsHttpHandler { ConnectTimeout = ConnectPatience }) { Timeout = Timeout.InfiniteTimeSpan };
        using HttpResponseMessage response = await http.GetAsync(address, HttpCompletionOption.ResponseHeadersRead, ct);
        if (!response.IsSuccessStatusCode)
            throw new DownloadException($"{address.Host} answers {(int)response.StatusCode} for {package.Name}");

        await using Stream from = await response.Content.ReadAsStreamAsync(ct);
        await using FileStream to = File.Create(file);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA512);
        byte[] block = new byte[81_920];
        long bytes = 0;
        while (await from.ReadAsync(block, ct) is > 0 and int read)
        {
            heard();
            bytes += read;
            if (bytes > package.Bytes)
                break; // whatever it is, it need not fill the disk
            hash.AppendData(block, 0, read);
            await to.WriteAsync(block.AsMemory(0, read), ct);
        }
        if (bytes < package.Bytes)
            throw new DownloadException($"the download from {address.Host} broke off after {bytes} of {package.Bytes} bytes");
        if (bytes > package.Bytes || Convert.ToBase64String(hash.GetHashAndReset()) != package.Sha512)
            throw new DownloadException($"what {address.Host} sent is not the published {package.Name} {package.Release} (its hash differs)");
    }
}
