using FleetWake.Logbook.People;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Analyst;
using FleetWake.Web.Office.Boat;
using FleetWake.Web.Office.Damage;
using FleetWake.Web.Office.Devices;
using FleetWake.Web.Office.Due;
using FleetWake.Web.Office.Fleet;
using FleetWake.Web.Office.Import;
using FleetWake.Web.Office.Mail;
using FleetWake.Web.Office.Me;
using FleetWake.Web.Office.Mend;
using FleetWake.Web.Office.People;
using FleetWake.Web.Office.Photos;
using FleetWake.Web.Office.Props;
using FleetWake.Web.Office.Quarantine;
using FleetWake.Web.Office.Questions;
using FleetWake.Web.Office.Register;
using FleetWake.Web.Office.Rules;
using FleetWake.Web.Office.Shop;
using FleetWake.Web.Office.Spares;
using FleetWake.Web.Office.Tags;
using FleetWake.Web.Office.Layouts;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office;

/// <summary>The pages of the office. Each page's file maps its own routes and says what they need.</summary>
public static class OfficePages
{
    /// <summary>Maps them.</summary>
    public static void MapOfficePages(this IEndpointRouteBuilder routes)
    {
        var office = routes.MapGroup("/office").ExcludeFromDescription();
        office.MapFleetPage();
        office.MapDevicesPage();
        office.MapQuarantinePage();
        office.MapTags();
        office.MapPhotos();
        office.MapPeoplePages();
        office.MapMySignIn();
        office.MapBoatPage();
        office.MapDuePages();
        office.MapQuestionsPage();
        office.MapMendPages();
        office.MapRegisterPages();
        office.MapMePage();
        office.MapPropsPage();
        office.MapPropPage();
        office.MapShopPage();
        office.MapSparesPage();
        office.MapRulesPage();
        office.MapDamagePages();
        office.MapImportPages();
        office.MapMailPages();
        office.MapTemplatesPages();
        office.MapPacksPage();
        office.MapAnalystPages();
    }
}
