using System.Xml.Linq;
using FleetWake.Store.People;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace FleetWake.Web.SignIn;

/// <summary>The framework's keys, kept in the record's database: what one node gave a browser, every node reads.</summary>
internal sealed class SharedKeys(BrowserKeyRing ring) : IXmlRepository
{
    public static void Add(IServiceCollection services)
    {
        services.AddDataProtection().SetApplicationName("fleetwake");
        services.AddSingleton<IConfigureOptions<KeyManagementOptions>>(s =>
            new ConfigureOptions<KeyManagementOptions>(o => o.XmlRepository = new SharedKeys(s.GetRequiredService<BrowserKeyRing>())));
    }

    public IReadOnlyCollection<XElement> GetAllElements() => [.. ring.All().Select(XElement.Parse)];

    public void StoreElement(XElement element, string friendlyName) => ring.Keep(friendlyName, element.ToString(SaveOptions.DisableFormatting));
}
