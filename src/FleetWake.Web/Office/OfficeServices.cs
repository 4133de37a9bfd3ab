using FleetWake.Reports.Mail;
using FleetWake.Web.Office.Boat;
using FleetWake.Web.Office.Damage;
using FleetWake.Web.Office.Due;
using FleetWake.Web.Office.Fleet;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.Office.Import;
using FleetWake.Web.Office.Mail;
using FleetWake.Web.Office.Mend;
using FleetWake.Web.Office.Props;
using FleetWake.Web.Office.Questions;
using FleetWake.Web.Office.Register;
using FleetWake.Web.Office.Rules;
using FleetWake.Web.Office.Spares;
using FleetWake.Web.Office.Layouts;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Web.Office;

/// <summary>What the pages of the office need.</summary>
internal static class OfficeServices
{
    public static IServiceCollection AddOffice(this IServiceCollection services)
    {
        services.AddSingleton<FleetRows>();
        services.AddSingleton<OfficeRecords>();
        services.AddSingleton<EntryBeside>();
        services.AddSingleton<BoatReading>();
        services.AddSingleton<DueReading>();
        services.AddSingleton<OfficeForms>();
        services.AddSingleton<MendReading>();
        services.AddSingleton<RegisterRoutes.Shown>();
        services.AddSingleton<MendRoutes.Shown>();
        services.AddSingleton<PropsReading>();
        services.AddSingleton<FleetLives>();
        services.AddSingleton<PropRoutes.Shown>();
        services.AddSingleton<SparesRoutes.Shown>();
        services.AddSingleton<RulesRoutes.Shown>();
        services.AddSingleton<DamageReading>();
        services.AddSingleton<ImportRoutes.Shown>();
        services.AddSingleton<DamageRoutes.Shown>();
        services.AddSingleton<MailDesk>();
        services.AddSingleton<HookDesk>();
        services.AddSingleton<MailAgain>();
        services.AddSingleton<ConfirmationMail>();
        services.AddSingleton<TemplatesRoutes.Shown>();
        return services.AddSingleton<QuestionReading>();
    }
}
