// A program that holds a server, for tests that kill it or press Ctrl-C. It says on one line each what it has reached.
using System.Runtime.InteropServices;
using FleetWake.Store.Servers;
using Npgsql;

var interrupted = new TaskCompletionSource();
using PosixSignalRegistration onInterrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal =>
{
    signal.Cancel = true; // as a host does: finish the work first, then end
    interrupted.TrySetResult();
});

await using LocalServer server = await LocalServer.StartAsync(
    new LocalServerOptions(DataFolder: args.FirstOrDefault(), Durable: false), Console.Error.WriteLine, TimeProvider.System, default);
Console.WriteLine($"holding {server.ProcessId} {server.Folder}");
await interrupted.Task;

// Time enough for a server that shares our fate to be gone.
await Task.Delay(TimeSpan.FromSeconds(1));
await using (var last = new NpgsqlConnection(server.ConnectionString("postgres")))
{
    await last.OpenAsync();
    await using var work = new NpgsqlCommand("SELECT 'written after the interrupt'", last);
    Console.WriteLine(await work.ExecuteScalarAsync());
}
