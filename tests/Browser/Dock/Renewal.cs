using System.Net;
using System.Net.Sockets;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>Stands before the program as a fleet of programs that is being renewed: what a phone asks for comes of the present version, or of the next.</summary>
internal sealed class Renewal : IDisposable
{
    /// <summary>The version that comes.</summary>
    public const string Next = "feedfacecafe";

    private readonly HttpListener listener = new();
    private readonly HttpClient upstream;

    private Renewal(string program)
    {
        upstream = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(program) };
        using (var free = new TcpListener(IPAddress.Loopback, 0))
        {
            free.Start();
            Url = $"http://127.0.0.1:{((IPEndPoint)free.LocalEndpoint).Port}";
        }

        listener.Prefixes.Add(Url + "/");
        listener.Start();
        _ = ListenAsync();
    }

    /// <summary>Its address.</summary>
    public string Url { get; }

    /// <summary>The worker comes of the next version.</summary>
    public bool WorkerIsNext { get; set; }

    /// <summary>The page does.</summary>
    public bool PageIsNext { get; set; }

    /// <summary>Stands before a program.</summary>
    public static Renewal Of(string program) => new(program);

    public void Dispose()
    {
        listener.Close();
        upstream.Dispose();
    }

    private async Task ListenAsync()
    {
        while (listener.IsListening)
        {
            try
            {
                _ = AnswerAsync(await listener.GetContextAsync());
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private async Task AnswerAsync(HttpListenerContext asked)
    {
        var present = Web.Dock.DockShell.Version;
        var path = asked.Request.RawUrl!;
        var next = path.StartsWith("/dock/sw.js", StringComparison.Ordinal) ? WorkerIsNext : PageIsNext;
        using var request = new HttpRequestMessage(new HttpMethod(asked.Request.HttpMethod), next ? path.Replace(Next, present, StringComparison.Ordinal) : path);
        if (asked.Request.HasEntityBody)
        {
            request.Content = new StreamContent(asked.Request.InputStream);
            request.Content.Headers.TryAddWithoutValidation("Content-Type", asked.Request.ContentType);
        }

        if (asked.Request.Headers["Authorization"] is { } key) request.Headers.TryAddWithoutValidation("Authorization", key);
        using var answer = await upstream.SendAsync(request);
        var body = await answer.Content.ReadAsByteArrayAsync();
        if (next && answer.Content.Headers.ContentType?.MediaType is "text/html" or "text/javascript" && path.StartsWith("/dock/", StringComparison.Ordinal))
            body = System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.UTF8.GetString(body).Replace(present, Next, StringComparison.Ordinal));
        asked.Response.StatusCode = (int)answer.StatusCode;
        asked.Response.ContentType = answer.Content.Headers.ContentType?.ToString();
        foreach (var header in answer.Headers.Where(h => h.Key is "FleetWake-Made-At" or "ETag")) asked.Response.Headers[header.Key] = header.Value.First();
        asked.Response.Headers["Cache-Control"] = "no-cache";
        if (body.Length > 0) await asked.Response.OutputStream.WriteAsync(body);
        asked.Response.Close();
    }
}
