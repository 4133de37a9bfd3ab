namespace FleetWake.Store.Servers;

/// <summary>How a person installs PostgreSQL on this system.</summary>
internal static class InstallCommand
{
    public static ServerNotFoundException Missing(Machine machine) => new(
        $"PostgreSQL {ServerBinaries.OldestMajor} or newer was not found; install it with: {For(machine)}");

    internal static string For(Machine machine)
    {
        string sudo = machine.IsRoot ? "" : "sudo ";
        // The system's own word stands first, so a derivative with a word of its own is answered by its family.
        return machine.System.Select(word => word switch
        {
            "debian" or "ubuntu" => $"{sudo}apt-get install -y postgresql",
            "fedora" or "rhel" => $"{sudo}dnf install -y postgresql-server",
            "alpine" => $"{sudo}apk add postgresql",
            "arch" => $"{sudo}pacman -S --noconfirm postgresql",
            "macos" => "brew install postgresql@17",
            "windows" => "winget install -e --id PostgreSQL.PostgreSQL.17",
            _ => null,
        }).FirstOrDefault(command => command is not null)
            ?? "the package manager of this system (the package is usually named postgresql)";
    }
}
