namespace FleetWake.Store.Servers.Download;

/// <summary>The package could not be had. The message is half a sentence that goes on after "but".</summary>
internal sealed class DownloadException(string whyNot) : Exception(whyNot);
