using Marten;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Store.People;

/// <summary>How people's rows lie, and who works on them.</summary>
internal static class PeopleRows
{
    /// <summary>Tells the store. What is looked up before the operator is known stands outside any operator's rows.</summary>
    public static void AddPeople(this StoreOptions options)
    {
        options.Schema.For<PersonCard>().DocumentAlias("person").SingleTenanted().Index(p => p.Address!).Index(p => p.Operator);
        options.Schema.For<PersonSession>().DocumentAlias("person_session").SingleTenanted().Index(s => s.PersonKey);
        options.Schema.For<PersonPassword>().DocumentAlias("person_password").SingleTenanted();
        options.Schema.For<PersonPasskey>().DocumentAlias("person_passkey").SingleTenanted().Index(k => k.PersonKey).Index(k => k.Handle);
        options.Schema.For<Invitation>().DocumentAlias("invitation").SingleTenanted().Index(i => i.PersonKey);
        options.Schema.For<SignInNote>().DocumentAlias("sign_in_note");
    }

    /// <summary>Adds the services.</summary>
    public static void AddFleetPeople(this IServiceCollection services)
    {
        services.AddSingleton<FleetPeople>();
        services.AddSingleton<FleetInvitations>();
        services.AddSingleton<FleetSessions>();
        services.AddSingleton<FleetPasskeys>();
        services.AddSingleton<SignInTries>();
        services.AddSingleton<SignInNotes>();
        services.AddSingleton<BrowserKeyRing>();
    }
}
