using FleetWake.Store.Servers;

namespace FleetWake.Store.Tests.Servers;

public sealed class NothingInstalledTests
{
    [Theory]
    [InlineData("ID=debian\n", "sudo apt-get install -y postgresql")]
    [InlineData("ID=ubuntu\nID_LIKE=debian\n", "sudo apt-get install -y postgresql")]
    [InlineData("NAME=\"Linux Mint\"\nID=linuxmint\nID_LIKE=\"ubuntu debian\"\n", "sudo apt-get install -y postgresql")]
    [InlineData("ID=fedora\n", "sudo dnf install -y postgresql-server")]
    [InlineData("ID=\"rocky\"\nID_LIKE=\"rhel centos fedora\"\n", "sudo dnf install -y postgresql-server")]
    [InlineData("ID=alpine\n", "sudo apk add postgresql")]
    [InlineData("ID=arch\n", "sudo pacman -S --noconfirm postgresql")]
    [InlineData("ID=plan9\n", "the package manager of this system (the package is usually named postgresql)")]
    public async Task One_line_names_the_command_that_installs_it_on_this_system(string osRelease, string command)
    {
        Machine machine = Server.Bare(Machine.WordsOf(osRelease.Split('\n')));
        Assert.Equal($"PostgreSQL 15 or newer was not found; install it with: {command}", await RefusalOnAsync(machine));
    }

    [Theory]
    [InlineData("macos", "brew install postgresql@17")]
    [InlineData("windows", "winget install -e --id PostgreSQL.PostgreSQL.17")]
    public async Task So_it_does_where_there_is_no_os_release(string system, string command)
    {
        Assert.Equal($"PostgreSQL 15 or newer was not found; install it with: {command}", await RefusalOnAsync(Server.Bare(system)));
    }

    [Fact]
    public async Task Root_who_forbids_the_installation_is_told_the_command_without_sudo()
    {
        Machine machine = Server.Bare("debian") with
        {
            IsRoot = true,
            Variable = name => name == "FLEETWAKE_INSTALL" ? "never" : null,
        };
        Assert.Equal("PostgreSQL 15 or newer was not found; install it with: apt-get install -y postgresql", await RefusalOnAsync(machine));
    }

    [Fact]
    public async Task Only_installed_programs_may_be_wanted_and_then_nothing_else_is_looked_for()
    {
        Machine machine = Server.Bare("fedora") with { Variable = name => name == "FLEETWAKE_PG_SOURCE" ? "installed" : null };
        Assert.EndsWith("sudo dnf install -y postgresql-server", await RefusalOnAsync(machine, said => Assert.Fail($"Nothing was to be done, but: {said}")));
    }

    private static async Task<string> RefusalOnAsync(Machine machine, Action<string>? say = null)
    {
        var refused = await Assert.ThrowsAsync<ServerNotFoundException>(() => LocalServer.StartAsync(
            machine, Server.Quick, say ?? (_ => { }), TimeProvider.System, TestContext.Current.CancellationToken));
        return refused.Message;
    }
}
