using FleetWake.Web.Office.Damage;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.Office.Import;
using FleetWake.Web.Office.Props;
using FleetWake.Web.Office.Rules;
using FleetWake.Web.Office.Shop;
using FleetWake.Web.Office.Spares;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.Office;

/// <summary>The pages of what lies in store, what it costs and by which rules it is kept.</summary>
internal static class StoreRoomPages
{
    public static void AddStoreRoomPages(this IServiceCollection services)
    {
        services.AddSingleton<OfficeForms>();
        services.AddSingleton<PropsReading>();
        services.AddSingleton<FleetLives>();
        services.AddSingleton<PropRoutes.Shown>();
        services.AddSingleton<SparesRoutes.Shown>();
        services.AddSingleton<RulesRoutes.Shown>();
        services.AddSingleton<DamageReading>();
        services.AddSingleton<ImportRoutes.Shown>();
        services.AddSingleton<DamageRoutes.Shown>();
    }

    public static void MapStoreRoomPages(this IEndpointRouteBuilder office)
    {
        office.MapPropsPage();
        office.MapPropPage();
        office.MapShopPage();
        office.MapSparesPage();
        office.MapRulesPage();
        office.MapDamagePages();
        office.MapImportPages();
    }
}
