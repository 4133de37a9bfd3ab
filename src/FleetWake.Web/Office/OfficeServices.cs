using FleetWake.Web.Office.Boat;
using FleetWake.Web.Office.Due;
using FleetWake.Web.Office.Fleet;
using FleetWake.Web.Office.Questions;
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
        services.AddStoreRoomPages();
        return services.AddSingleton<QuestionReading>();
    }
}
