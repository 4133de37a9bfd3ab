namespace FleetWake.Store.Servers;

internal static class Removal
{
    /// <summary>Tries again for two seconds: the children of a killed server write a little longer than it lives.</summary>
    public static async Task DeleteAsync(string folder)
    {
        for (int attempt = 0; ; attempt++)
        {
            try
            {
                if (Directory.Exists(folder))
                    Directory.Delete(folder, recursive: true);
                return;
            }
            catch (DirectoryNotFoundException)
            {
                return;
            }
            catch (Exception busy) when (busy is IOException or UnauthorizedAccessException && attempt < 20)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(100));
            }
        }
    }
}
